// What is read of the report for the list of what to buy.

export interface Pieces {
  pieces: { length_mm: number; cuts: { piece: string; length_mm: number }[] }[];
  used_fraction: number;
  too_long: { piece: string; length_mm: number }[];
}

export interface Screws {
  count: number;
  number: number;
  across_mm: number;
  length_mm: number;
}

export interface Report {
  job: { units: 'in' | 'mm' };
  stock: {
    board_sheets: number;
    sheets_used_fraction: number;
    boards: Pieces;
    padding: Pieces;
    screws?: Screws | null;
  };
  cloth: { color: string; length_to_buy_mm: number; roll_width_mm: number; used_fraction: number }[];
  weight: {
    bumpers: { bumper: string; boards_g: number; padding_g: number; cloth_g: number; fasteners_g: number }[];
    set_g: number;
    unknown_brackets: number;
  };
}

export function readReport(bytes: Uint8Array): Report {
  return JSON.parse(new TextDecoder().decode(bytes)) as Report;
}
