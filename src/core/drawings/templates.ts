import type { Outcome } from '../quantity/index.ts';
import type { Paper } from './paper.ts';
import type { PrinterReading } from './printerCheck.ts';
import type { Sheet } from './sheet.ts';
import type { TemplateJob } from './templateJob.ts';

export interface TemplateOptions {
  /** Portrait; the piece is turned instead, so that across and down stay those of the printer. */
  readonly paper: Paper;
  /** Bars measured on an earlier print; the sheets come out compensated. */
  readonly printer?: PrinterReading;
  readonly bike: string;
  /** As to be printed. */
  readonly date: string;
}

export function templateSheets(_job: TemplateJob, _options: TemplateOptions): Outcome<readonly Sheet[]> {
  throw new Error('being written');
}
