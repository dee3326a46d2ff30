// What all fields are given.
import { createContext } from 'preact';
import type { Choices } from 'swathe';
import type { GivenFiles } from '../state/files';
import type { WorkBench } from '../state/make_bench';
import type { LitKeys } from './lit';

export interface FieldsGiven {
  bench: WorkBench;
  lit: LitKeys;
  choices: Choices;
  files: GivenFiles;
}

export const FieldsContext = createContext<FieldsGiven>(null as unknown as FieldsGiven);
