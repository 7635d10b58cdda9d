import type { FillRole, PenRole, TextItem } from './sheet.ts';

/** How a stroke role looks. Every writer draws from this one table. */
export interface PenStyle {
  /** Line width on paper [mm]. */
  readonly width: number;
  /** Drawn and blank lengths in turn [mm]; empty for a continuous line. */
  readonly dash: readonly number[];
  /** `#rrggbb`. */
  readonly color: string;
}

const INK = '#000000';
const GRAY = '#4d4d4d';
/** The one color of a sheet: it says "look here first" and still reads as dark gray in a black print. */
const ACCENT = '#a8321a';

/**
 * Line widths and dashes by role: wide 0.5, narrow 0.25 and 0.18 mm; dash lengths in multiples of the width d
 * (dash 12·d, gap 3·d, long dash 24·d, dot at most 0.5·d, here longer so that a home printer shows it).
 * @source iso-128-2, line types 01, 02, 04, 05 and line groups 0.5
 */
export const penStyles: Readonly<Record<PenRole, PenStyle>> = {
  outline: { width: 0.5, dash: [], color: INK },
  thin: { width: 0.25, dash: [], color: INK },
  hidden: { width: 0.25, dash: [3, 0.75], color: GRAY },
  center: { width: 0.18, dash: [5, 0.8, 0.6, 0.8], color: INK },
  dimension: { width: 0.18, dash: [], color: GRAY },
  cut: { width: 0.25, dash: [], color: INK },
  mark: { width: 0.18, dash: [], color: INK },
  bend: { width: 0.25, dash: [6, 0.8, 0.6, 0.8, 0.6, 0.8], color: INK },
  ground: { width: 0.5, dash: [], color: GRAY },
  accent: { width: 0.5, dash: [], color: ACCENT },
};

/** Fills by role, `#rrggbb`; `none` is left out. */
export const fillColors: Readonly<Record<Exclude<FillRole, 'none'>, string>> = {
  paper: '#ffffff',
  light: '#f1f1f1',
  medium: '#d9d9d9',
  dark: '#8f8f8f',
  ink: INK,
  accent: '#f4dfd8',
};

/** Text tones, `#rrggbb`. */
export const toneColors: Readonly<Record<TextItem['tone'], string>> = {
  ink: INK,
  muted: '#555555',
  accent: ACCENT,
};
