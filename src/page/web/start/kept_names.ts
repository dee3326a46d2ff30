// What kept jobs are called. Where several have one title, their files' names tell them apart, and where
// those are the same, too, the dates.
import type { KeptJob } from '../state/kept';
import { say } from '../words/en';

export interface JobName {
  title: string;
  /** Which of those with this title, in brackets; "" where no other has it. */
  which: string;
  /** Both. */
  all: string;
}

export function dateOf({ saved }: KeptJob): string {
  const date = new Date(saved);
  return Number.isNaN(date.getTime()) ? '' : date.toLocaleString(undefined, { dateStyle: 'medium', timeStyle: 'short' });
}

function titleOf({ title, number, file }: KeptJob): string {
  return title || number || file;
}

export function nameOf(job: KeptJob, jobs: readonly KeptJob[]): JobName {
  const title = titleOf(job);
  const sameTitle = jobs.filter((one) => titleOf(one) === title);
  if (sameTitle.length < 2) return { title, which: '', all: title };
  const isFileSame = sameTitle.filter(({ file }) => file === job.file).length > 1;
  const isFileTitle = job.file === title;
  const parts = [isFileTitle ? '' : job.file, isFileSame || isFileTitle ? dateOf(job) : ''];
  const which = say.start.which(parts.filter((part) => part !== '').join(', '));
  return { title, which, all: `${title} ${which}` };
}
