// What all fields are given.
import { createContext } from 'preact';
import type { Choices, Swathe, Words } from 'swathe';
import type { GivenFiles } from '../state/files';
import type { WorkBench } from '../state/make_bench';
import type { LitKeys } from './lit';

export interface FieldsGiven {
  bench: WorkBench;
  lit: LitKeys;
  words: Words;
  choices: Choices;
  files: GivenFiles;
  /** A core of its own, to try something with. */
  apart: <T>(step: (core: Swathe) => Promise<T>) => Promise<T>;
}

export const FieldsContext = createContext<FieldsGiven>(null as unknown as FieldsGiven);
