// The page for scripts: the same answers as the command's.
import type { Finding, MadeFile, Outcome, Swathe } from 'swathe';

export type GivenBytes = Record<string, Uint8Array>;

export interface Scripting {
  /** Every file that the command writes; `files`: those that the job names. */
  files(text: string, files?: GivenBytes, file?: string): Promise<Outcome<MadeFile[]>>;
  /** report.json. */
  report(text: string, files?: GivenBytes, file?: string): Promise<Outcome<unknown>>;
  check(text: string, files?: GivenBytes, file?: string): Promise<Outcome<Finding[]>>;
}

declare global {
  interface Window {
    swathe: Scripting;
  }
}

export function scripting(start: () => Swathe): Scripting {
  async function of<T>(text: string, files: GivenBytes, file: string, ask: (core: Swathe) => Promise<T>): Promise<Outcome<T>> {
    const core = start();
    try {
      for (const [name, bytes] of Object.entries(files)) await core.give(name, bytes);
      const opened = await core.open(text, { file });
      if (!opened.ok) return opened;
      return { ok: true, value: await ask(core) };
    } finally {
      core.close();
    }
  }
  return {
    files: (text, files = {}, file = 'job.toml') => of(text, files, file, (core) => core.files()),
    report: (text, files = {}, file = 'job.toml') =>
      of(text, files, file, async (core) => JSON.parse(new TextDecoder().decode(await core.report()))),
    check: (text, files = {}, file = 'job.toml') =>
      of(text, files, file, async (core) => (await core.findings()).findings),
  };
}
