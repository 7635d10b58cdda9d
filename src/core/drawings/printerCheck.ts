import { bad, good, type Issue, type Outcome } from '../quantity/index.ts';

/** What a rule reads on two printed bars [mm]. */
export interface PrinterReading {
  readonly across: number;
  readonly down: number;
  /** What both bars say [mm]; default 100. */
  readonly nominal?: number;
  /** The longest spacing that matters on the sheet [mm], to say what the error does; default 100. */
  readonly spacing?: number;
}

export interface PrinterVerdict {
  readonly verdict: 'pass' | 'compensate' | 'reject';
  /** Printed / true, across the paper and down it. */
  readonly across: number;
  readonly down: number;
  /** What `spacing` would come out wrong by [mm], + too long, in the worse axis. */
  readonly error: number;
  /** For the builder: what was found and what to do. */
  readonly text: string;
}

/** What the drawing is multiplied by so that it measures true. */
export interface PrinterCorrection {
  readonly across: number;
  readonly down: number;
}

const NOMINAL = 100;
/** A steel rule is read to about 0.25 mm; half that error is lost in the scribed line. @source practice */
const READING = 0.25 / 100;
/** Feed and drum errors of home printers stay under about 1 %. @source practice */
const PRINTER_ERROR = 0.01;
/** No printer is this far out by itself: the page was scaled to fit. @source practice */
const FITTED = 0.02;
/** Fitting scales both axes alike; its two readings differ by no more than the reading error. */
const ALIKE = 2 * READING;

/**
 * Whether a print may be cut from: within 0.25 in 100 it passes; a small error is compensated; a page that was
 * fitted (2 % or more in an axis, or over 1 % with both axes alike) must be printed again, because a
 * compensated sheet would be fitted by the next print, too.
 * @issue out-of-range: a reading that is not between half and twice the bar
 */
export function judgePrinter(reading: PrinterReading): Outcome<PrinterVerdict> {
  const { nominal = NOMINAL, spacing = NOMINAL } = reading;
  const issues = (['across', 'down'] as const).flatMap((axis) => readingIssue(axis, reading[axis], nominal));
  const [first, ...rest] = issues;
  if (first !== undefined) return bad(first, ...rest);
  const [across, down] = [reading.across / nominal, reading.down / nominal];
  const worst = Math.abs(across - 1) >= Math.abs(down - 1) ? across : down;
  const error = spacing * (worst - 1);
  const base = { across, down, error };
  const effect = `a ${round(spacing, 1)} mm spacing would be ${amount(error)}`;
  const found = `Printed at ${across.toFixed(3)} across and ${down.toFixed(3)} down`;
  const off = [Math.abs(across - 1), Math.abs(down - 1)] as const;
  if (Math.max(...off) <= READING)
    return good({ ...base, verdict: 'pass', text: `${found}: true to scale.` });
  const alike = Math.abs(across - down) <= ALIKE && Math.min(...off) > PRINTER_ERROR;
  if (Math.max(...off) >= FITTED || alike) {
    const how = alike ? 'the page was printed with fit to page' : 'the page was not printed at actual size';
    return good({
      ...base,
      verdict: 'reject',
      text: `${found}: ${how}; do not cut from it: ${effect}. Print again at actual size (100 %).`,
    });
  }
  return good({
    ...base,
    verdict: 'compensate',
    text: `${found}: uncorrected, ${effect}. Measure the bars of a corrected sheet again.`,
  });
}

/** The factors that undo a measured printer error. */
export const correctionOf = (verdict: Pick<PrinterVerdict, 'across' | 'down'>): PrinterCorrection => ({
  across: 1 / verdict.across,
  down: 1 / verdict.down,
});

function readingIssue(axis: 'across' | 'down', value: number, nominal: number): readonly Issue[] {
  if (value >= nominal / 2 && value <= nominal * 2) return [];
  return [
    {
      code: 'out-of-range',
      path: `printer.${axis}`,
      given: value,
      min: nominal / 2,
      max: nominal * 2,
      unit: 'mm',
    },
  ];
}

const amount = (error: number): string =>
  `${Math.abs(error).toFixed(Math.abs(error) < 1 ? 2 : 1)} mm ${error < 0 ? 'short' : 'long'}`;
const round = (value: number, decimals: number): string => String(Number(value.toFixed(decimals)));
