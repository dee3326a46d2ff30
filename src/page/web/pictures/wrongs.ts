// What is wrong, with the parts of the model that it is about.
import { subjectsOf } from '../fields/subjects';
import { notMetWords } from '../rules/not_met';
import type { Bench } from '../state/bench';
import { say } from '../words/en';
import { unbroken } from '../words/lengths';

export interface Wrong {
  subjects: readonly string[];
  words: string;
}

/** Rules that are not met, and faults of the job as they are told: of these the pictures, which are
 * the last good ones, show the parts that the key says. */
export function wrongsOf(bench: Bench): Wrong[] {
  const fields = bench.fields.value;
  const ofJob = (key: string, sentence: string): Wrong => ({
    subjects: subjectsOf(key, fields),
    words: say.pictures.atFault(unbroken(sentence)),
  });
  return [
    ...bench.findings.value
      .filter(({ verdict }) => verdict === 'fail')
      .map((finding) => ({ subjects: finding.subjects, words: notMetWords(finding) })),
    ...bench.told.value.map((fault) => ofJob(fault.key ?? '', fault.sentence)),
    ...[...bench.toldHalf.value].flatMap(([key, faults]) =>
      faults.map(({ sentence }) => ofJob(key, sentence))),
  ];
}
