// A font of one's own: the core looks at it before it may be chosen.
import type { Swathe } from 'swathe';
import { say } from '../words/en';
import type { GivenFiles } from './files';

/** Why it is of no use, and was not taken; empty where it was. `toJob`: it is the job's, too. */
export async function takeFont(
  core: Swathe, files: GivenFiles, name: string, bytes: Uint8Array, toJob = true,
): Promise<string> {
  let takeBack = () => {};
  try {
    takeBack = await files.give(name, bytes, toJob);
    const outcome = await core.lookAtFont(name);
    if (outcome.ok) return '';
    takeBack();
    return outcome.faults.map((fault) => fault.sentence).join(' ');
  } catch {
    takeBack();
    return say.job.notAFont; // it ended the core
  }
}
