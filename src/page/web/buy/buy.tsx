// What to buy for the covers, for all colors, from the report.
import { useSignal, useSignalEffect } from '@preact/signals';
import { Overtaken } from 'swathe';
import { readToml } from '../fields/toml_value';
import type { Back } from '../state/back';
import { why } from '../state/why';
import type { WorkBench } from '../state/make_bench';
import { say } from '../words/en';
import { clothWords, lengthIn, lengthWords, massWords } from '../words/lengths';
import { readReport } from './report';
import type { Pieces, Report, Screws } from './report';

export function Buy({ bench, back }: { bench: WorkBench; back: Back }) {
  const report = useSignal<Report | null>(null);
  useSignalEffect(() => {
    if (back.version.value === 0) return;
    back.core.report().then((bytes) => (report.value = readReport(bytes)), (error) => {
      if (!(error instanceof Overtaken)) bench.trouble.value = why(error);
    });
  });
  if (!report.value) return <p class="caution">{bench.faults.value.length > 0 ? say.buy.notYet : say.page.loading}</p>;
  const { stock, cloth, weight, job: { units } } = report.value;
  const old = bench.stale.value || bench.opened.value?.version !== back.version.value;
  const shown = (key: string) => bench.fields.value.find((one) => one.key === key);
  const sides = readToml(shown('boards.stock')?.value ?? '');
  const sheet = (Array.isArray(sides) ? sides : []).map((side) => lengthIn(units, String(side))).join(' x ');
  const block = shown('padding.form')?.shown === 'block';
  const stockLength = stock.padding.pieces[0]?.length_mm ?? 0;
  return (
    <div class={old ? 'buy old' : 'buy'}>
      <dl>
        <dt>{say.buy.boards}</dt>
        <dd>{say.buy.sheets(stock.board_sheets, sheet)} <i>{say.buy.used(stock.sheets_used_fraction)}</i></dd>
        <Cuts of={stock.boards} units={units} />
        {stock.screws && stock.screws.count > 0 && <>
          <dt>{say.buy.screws}</dt>
          <dd>{say.buy.screwsOf(stock.screws.count, screwSize(stock.screws, units))}</dd>
        </>}
        <dt>{say.buy.padding}</dt>
        <dd>{(block ? say.buy.blocks : say.buy.noodles)(stock.padding.pieces.length, lengthWords(stockLength, units))}{' '}
          <i>{say.buy.used(stock.padding.used_fraction)}</i></dd>
        <Cuts of={stock.padding} units={units} />
        <dt>{say.buy.cloth}</dt>
        {cloth.map((one) => (
          <dd key={one.color}>{say.buy.clothOf(one.color, clothWords(one.length_to_buy_mm, units), lengthWords(one.roll_width_mm, units))}{' '}
            <i>{say.buy.used(one.used_fraction)}</i></dd>
        ))}
        <dt>{say.buy.weight}</dt>
        <dd>{massWords(weight.set_g, units)}</dd>
        {weight.bumpers.map((one) => (
          <dd key={one.bumper}>{say.buy.bumper(one.bumper, massWords(one.boards_g + one.padding_g + one.cloth_g + one.fasteners_g, units))}</dd>
        ))}
        {weight.unknown_brackets > 0 && <dd class="caution">{say.buy.notCounted(weight.unknown_brackets)}</dd>}
      </dl>
    </div>
  );
}

/** By its number, or in a job in millimeters by how thick it is. */
function screwSize({ number, across_mm, length_mm }: Screws, units: 'in' | 'mm'): string {
  const length = lengthWords(length_mm, units);
  return units === 'in' ? `No. ${number}, ${length} long` : `${Number(across_mm.toFixed(1))} x ${length}`;
}

function Cuts({ of, units }: { of: Pieces; units: 'in' | 'mm' }) {
  if (of.pieces.length === 0) return null;
  return (
    <dd>
      <details>
        <summary>{say.buy.cuts}</summary>
        <ol>
          {of.pieces.map((piece, k) => (
            <li key={k}>{piece.cuts.map((cut) => `${cut.piece} ${lengthWords(cut.length_mm, units)}`).join(', ')}</li>
          ))}
        </ol>
      </details>
      {of.too_long.length > 0 && <p class="caution">{say.buy.tooLong(of.too_long.map((one) => one.piece).join(', '))}</p>}
    </dd>
  );
}
