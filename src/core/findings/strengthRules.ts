import { originalName } from '../build/index.ts';
import { derived, practice } from '../quantity/index.ts';
import {
  type Check,
  comparisonOf,
  isWear,
  type Remedy,
  type Strength,
  type UtilizationRow,
  type WeldLife,
} from '../strength/index.ts';
import type { Finding } from './finding.ts';
import { REMEDIES, WHY } from './strengthWords.ts';
import { say, sayLength } from './words.ts';

/** Does it hold: every comparison over its limit, weld lives, and what the model could not take as drawn. */
export function strengthFindings(strength: Strength): readonly Finding[] {
  return [
    ...worstFlaws(strength.flaws).map(flawFinding),
    ...firstOfPairs(strength.rows).map((row) => rowFinding(row, strength)),
    ...weldFindings(strength),
    ...threadFindings(strength),
    ...outboardNotes(strength),
  ];
}

/** Rows over their limit, the worst of each comparison. */
function firstOfPairs(rows: readonly UtilizationRow[]): UtilizationRow[] {
  const seen = new Set<string>();
  return rows.filter((row) => {
    const key = comparisonOf(row);
    if (row.utilization <= 1 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function rowFinding(row: UtilizationRow, strength: Strength): Finding {
  const { cases, settings, remedies } = strength;
  const one = cases.find(({ id }) => id === row.case);
  const isLeast = row.utilization > 1 && row.value < row.limit;
  const isBeyondYield = AGAINST_YIELD.includes(row.check) && row.utilization > settings.yieldFactor;
  const path = pathOf(strength, row.part);
  const remedy = remedyText(row, remedies);
  return {
    id: `strength.${row.check}:${originalName(row.part)}`,
    severity: severityOf(row, isBeyondYield),
    question: 'hold',
    part: originalName(row.part),
    ...(path === undefined ? {} : { path }),
    what: `"${row.part}", ${row.where}, ${one?.name ?? row.case}: ${row.quantity} is ${sayValue(row.value, row)}; ${isLeast ? 'at least' : 'at most'} ${sayValue(row.limit, row)} is asked for.`,
    value: row.value,
    limit: row.limit,
    margin: isLeast ? row.value - row.limit : row.limit - row.value,
    kind: row.kind,
    why: `${one ? `${one.basis} ` : ''}${isBeyondYield ? 'The calculated stress passes yield: it bends for good.' : WHY[row.check]}${row.note ? ` ${row.note}` : ''}`,
    ...(remedy === undefined ? {} : { remedy }),
    source: row.source,
  };
}

/** Stresses whose limit is yield over the factor asked for. */
const AGAINST_YIELD: readonly Check[] = ['vonMises', 'shaftStress', 'axleBending', 'plateStress'];

/** A chain rated for less than this share of its power is worn in a season: more than good to know (practice). */
const WORN_SOON = 0.25;

/** What wears sooner and does not let go is good to know, unless it is far over its rating. */
function severityOf(row: UtilizationRow, isBeyondYield: boolean): Finding['severity'] {
  if (isWear(row)) return row.check === 'chainPower' && row.value < WORN_SOON ? 'caution' : 'note';
  return isBeyondYield ? 'stop' : 'caution';
}

/** A fit, told to a tenth of a micrometer [m]. */
const SMALL_LENGTH = 5e-4;

const sayValue = (value: number, { kind }: UtilizationRow): string =>
  kind === 'ratio'
    ? `${Number(value.toPrecision(3))}`
    : kind === 'length' && value < SMALL_LENGTH
      ? `${(value * 1000).toFixed(4)} mm`
      : say(value, kind, kind === 'pressure' ? 1 : undefined);

/** What was tried by running the check again. */
function remedyText(row: UtilizationRow, remedies: readonly Remedy[]): string | undefined {
  const tried = remedies.filter((remedy) => comparisonOf(remedy.row) === comparisonOf(row));
  return tried.length > 0 ? tried.map((one) => triedText(row, one)).join(' Or: ') : REMEDIES[row.check];
}

function triedText(row: UtilizationRow, tried: Remedy): string {
  const now = `${Math.round(tried.utilization * 100)} % of the limit`;
  if (tried.holds) return `${tried.what}: tried, it then comes to ${now}.`;
  const besides = /^Make "/.test(tried.what) ? '; another tube or gusset must share the load' : '';
  return `${tried.what}: tried, it comes to ${now} from ${Math.round(row.utilization * 100)} %, which is not enough by itself${besides}.`;
}

function pathOf({ frame, rows }: Strength, part: string): string | undefined {
  const name = originalName(part);
  if (rows.some((row) => row.part === name && row.check === 'plateStress')) return `plates.${name}`;
  if (frame.welds.some(({ line }) => originalName(line) === name) && name !== 'neck')
    return `frame.tubes.${name}`;
  return name === 'neck' ? 'steering.neck' : undefined;
}

/** One of each rule and part: that with the widest gap. */
function worstFlaws(flaws: Strength['flaws']): Strength['flaws'] {
  const worst = new Map<string, Strength['flaws'][number]>();
  for (const flaw of flaws) {
    const key = `${flaw.rule} ${flaw.part}`;
    if ((flaw.gap ?? 0) >= (worst.get(key)?.gap ?? 0)) worst.set(key, flaw);
  }
  return [...worst.values()];
}

function flawFinding(flaw: Strength['flaws'][number]): Finding {
  const isLoose = flaw.rule === 'mechanism' || flaw.rule === 'refused';
  return {
    id: `strength.${flaw.rule}:${flaw.part}`,
    severity: isLoose ? 'stop' : 'caution',
    question: 'hold',
    part: flaw.part,
    what:
      flaw.gap === undefined
        ? `"${flaw.part}": ${flaw.reason}.`
        : `"${flaw.part}": ${flaw.reason}, ${sayLength(flaw.gap)} away.`,
    ...(flaw.gap === undefined
      ? {}
      : { value: flaw.gap, limit: 0, margin: -flaw.gap, kind: 'length' as const }),
    why: isLoose
      ? 'Nothing can be said of the strength of what falls down by itself.'
      : 'The strength check had to guess how the load gets into the frame.',
    remedy: isLoose
      ? 'Join what moves to the rest of the frame.'
      : 'Move it, make it longer, or add a tab or tube that it is welded to.',
    source: derived('the placed parts'),
  };
}

const sayKilometers = (life: number): string =>
  Number.isFinite(life) ? `${Number(life.toPrecision(2))} km` : 'without limit by this rule';

/** Welds that may not last as far as was asked for, the shortest of each tube and its mirror image. */
function weldFindings({ welds, settings }: Strength): Finding[] {
  const seen = new Set<string>();
  const short = welds.filter((weld: WeldLife) => {
    if (weld.life.low >= settings.life || seen.has(originalName(weld.part))) return false;
    seen.add(originalName(weld.part));
    return true;
  });
  return short.map((weld) => ({
    id: `strength.weld-life:${originalName(weld.part)}`,
    severity: 'caution',
    question: 'hold',
    part: originalName(weld.part),
    what: `"${weld.part}", ${weld.where}: by the stated ride spectrum a crack may show after ${sayKilometers(weld.life.low)} to ${sayKilometers(weld.life.high)}; ${sayKilometers(settings.life)} are asked for.`,
    value: weld.life.low,
    limit: settings.life,
    margin: weld.life.low - settings.life,
    kind: 'ratio',
    why: `Detail ${weld.detail} of ${say(weld.category, 'pressure', 1)}, one class down with its factor to one class up. Stronger steel does not help a weld; an estimate, not a promise.`,
    remedy:
      'Look at this weld often; a lower stress range by a thicker tube, a gusset that ends softly, or a joint moved away from the bend.',
    source: weld.source,
  }));
}

/** Threads that bear in a plate or leg. */
function threadFindings({ axles }: Strength): Finding[] {
  return axles.flatMap(({ threads }) =>
    threads.map(
      ({ axle, side, holder, reach, thickness }): Finding => ({
        id: `strength.axle-thread-${side}:${axle}`,
        severity: reach > thickness / 2 ? 'caution' : 'note',
        question: 'hold',
        part: axle,
        what: `"${axle}": the thread on the ${side} runs ${sayLength(reach)} into "${holder}", ${sayLength(thickness)} thick.`,
        value: reach,
        limit: 0,
        margin: -reach,
        kind: 'length',
        why: 'The plate then bears on the crests of the thread, cuts into them and goes loose, and the root of the last thread is where an axle breaks.',
        remedy: 'An axle threaded no further than its washers, or more washers under the nut.',
        source: practice('the thread ends before the plate'),
      }),
    ),
  );
}

/** How much an outboard bearing brings, side by side. */
function outboardNotes({ drive }: Strength): Finding[] {
  return drive.shafts.flatMap(({ id, outboard, misalignment }): Finding[] => {
    if (!outboard) return [];
    const { with: held, without } = outboard;
    return [
      {
        id: `strength.outboard:${id}`,
        severity: 'note',
        question: 'hold',
        part: id,
        what: `${outboard.isThere ? 'The' : 'An added'} outboard bearing of "${id}": largest stress ${say(held.maxStress, 'pressure', 1)} with it, ${say(without.maxStress, 'pressure', 1)} without; most loaded bearing ${say(held.maxReaction, 'force')} and ${say(without.maxReaction, 'force')}; tilt ${(held.maxSlope * 1000).toFixed(2)} and ${(without.maxSlope * 1000).toFixed(2)} mrad.`,
        why: `It is one more plate to line up; a bearing out of line loads the others${misalignment ? `: ${sayLength(misalignment.offset)} off adds up to ${say(misalignment.reaction, 'force')} on seats as stiff as the build file tells` : ''}.`,
        source: derived('continuous beam on rigid bearings'),
      },
    ];
  });
}
