import table from '../../../data/standards/threads.json' with { type: 'json' };
import { bad, good, inches, type Length, mm, type Outcome, type SourceRef } from '../quantity/index.ts';
import { findDrill } from './drill.ts';
import { plainBolt } from './hole.ts';

/** A screw thread and the drill for its tap. */
export interface Thread {
  /** `M8`, `M10x1.25`, `5/16-18`. */
  readonly name: string;
  readonly system: 'metric' | 'inch';
  readonly series: 'coarse' | 'fine' | 'UNC' | 'UNF';
  /** d, major diameter [m]. */
  readonly major: Length;
  /** p, pitch [m]. */
  readonly pitch: Length;
  /** Tap drill [m] and its name in the set. */
  readonly tapDrill: { readonly diameter: Length; readonly name: string };
  /** At, tensile stress area [m²]. */
  readonly stressArea: number;
  readonly source: SourceRef;
}

type Row = (typeof table.rows)[number];

/** All threads of the table. */
export const threads: readonly Thread[] = table.rows.map(threadOfRow);

const bySize: ReadonlyMap<string, readonly Thread[]> = new Map(
  threads.map(({ name }) => {
    const size = plainBolt(name);
    return [size, threads.filter((thread) => plainBolt(thread.name) === size)];
  }),
);

/**
 * A thread by name; a bolt size alone (`M8`, `5/16 in`) is the coarse series. At = π/4·(d − 0.938194·p)² metric,
 * π/4·(d − 0.974279·p)² inch.
 * @issue not-in-table — with the threads of the same size
 * @source shigley-9, table 8-2 and its footnote; machinerys-handbook-31, tensile stress area
 */
export function findThread(text: string): Outcome<Thread> {
  const same = bySize.get(plainBolt(text)) ?? [];
  const found = same.find((thread) => isPitch(thread, text)) ?? same.find(isCoarse);
  if (found && (isPitch(found, text) || !hasPitch(text))) return good(found);
  const nearest = (same.length > 0 ? same : threads.filter(isCoarse)).map((thread) => thread.name);
  return bad({ code: 'not-in-table', path: '', given: text, nearest });
}

const isCoarse = (thread: Thread): boolean => thread.series === 'coarse' || thread.series === 'UNC';

const pitchText = (text: string): RegExpExecArray | null =>
  /^\s*m[\d.]+\s*[x×]\s*([\d.]+)/i.exec(text) ?? /-\s*(\d+)\s*(?:UNC|UNF)?\s*$/i.exec(text);

const hasPitch = (text: string): boolean => pitchText(text) !== null || /unf|unc/i.test(text);

function isPitch(thread: Thread, text: string): boolean {
  const given = pitchText(text)?.[1];
  if (given === undefined) return text.toUpperCase().includes(thread.series);
  const pitch = thread.system === 'metric' ? mm(Number(given)) : inches(1 / Number(given));
  return Math.abs(pitch - thread.pitch) < 1e-9;
}

function threadOfRow(row: Row): Thread {
  const metric = row.system === 'metric';
  const major = metric ? mm(row.majorMm!) : inches(row.majorIn!);
  const pitch = metric ? mm(row.pitchMm!) : inches(1 / row.threadsPerInch!);
  const mean = major - (metric ? 0.938194 : 0.974279) * pitch;
  return {
    name: row.name,
    system: metric ? 'metric' : 'inch',
    series: row.series as Thread['series'],
    major,
    pitch,
    tapDrill: metric
      ? { diameter: mm(row.tapDrillMm!), name: `${row.tapDrillMm} mm` }
      : { diameter: findDrill(row.tapDrill!)!.diameter, name: row.tapDrill! },
    stressArea: (Math.PI / 4) * mean * mean,
    source: row.source,
  };
}
