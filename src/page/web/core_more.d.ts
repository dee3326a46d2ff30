// What the module has besides, for the page's fields and handles.
import 'swathe';

declare module 'swathe' {
  interface Swathe {
    fields(text: string): Promise<Outcome<FieldValue[]>>;
    typed(text: string, key: string, typed: string, steps?: number): Promise<Outcome<{ value: string; reads: string }>>;
    moved(subject: string, mm: number, options: { snap: boolean }): Promise<Outcome<Moved>>;
    words(): Promise<Words>;
  }
  interface Moved {
    text: string;
    changes: KeyChange[];
    mm: number;
    words: string;
  }
  interface FieldValue {
    key: string;
    path: string;
    given: boolean;
    value: string;
    shown: string;
    line: number;
    column: number;
  }
  interface KeyForm {
    kind:
      | 'length' | 'lengths' | 'points' | 'angle' | 'number' | 'count' | 'flag' | 'text' | 'digits'
      | 'choice' | 'color' | 'colors' | 'axes' | 'names' | 'side' | 'sides' | 'bumper' | 'end'
      | 'side-place' | 'paper';
    least?: number;
    most?: number;
    unit: string;
    words: string[];
    count?: [number, number];
  }
  interface KeyWords {
    label: string;
    form: KeyForm;
  }
  interface Words {
    keys: KeyWords[];
    checks: { id: string; asks: string; why: string }[];
    tables: { path: string; many: [number, number] | null }[];
  }
}
