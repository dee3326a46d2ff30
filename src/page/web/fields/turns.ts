// What changes the job after a trial, one after the other: each press counts, and each trial is of the
// job that the one before it left.

let turn: Promise<unknown> = Promise.resolve();

export function inTurn<T>(step: () => Promise<T>): Promise<T> {
  const done = turn.then(step);
  turn = done.catch(() => {});
  return done;
}
