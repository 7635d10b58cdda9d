import { derived } from '../quantity/index.ts';
import type { Remedy, Strength, UtilizationRow, WeldLife } from '../strength/index.ts';
import type { Finding } from './finding.ts';
import { say, sayLength } from './words.ts';

/** Does it hold: every comparison over its limit, weld lives, and what the model could not take as drawn. */
export function strengthFindings(strength: Strength): readonly Finding[] {
  return [
    ...worstFlaws(strength.flaws).map(flawFinding),
    ...firstOfPairs(strength.rows).map((row) => rowFinding(row, strength)),
    ...weldFindings(strength),
    ...outboardNotes(strength),
  ];
}

const leftOf = (part: string): string => part.replace(/\.right$/, '');

/** Rows over their limit, the worst of each part, its mirror image and the quantity. */
function firstOfPairs(rows: readonly UtilizationRow[]): UtilizationRow[] {
  const seen = new Set<string>();
  return rows.filter((row) => {
    const key = `${leftOf(row.part)} ${row.quantity}`;
    if (row.utilization <= 1 || seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

const slug = (text: string): string =>
  text
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '');

function rowFinding(row: UtilizationRow, strength: Strength): Finding {
  const { cases, settings, remedies } = strength;
  const one = cases.find(({ id }) => id === row.case);
  const isLeast = row.utilization > 1 && row.value < row.limit;
  const isStress = row.quantity === 'equivalent stress' || row.quantity.startsWith('bending stress');
  const isBeyondYield = isStress && row.utilization > settings.yieldFactor;
  const path = pathOf(strength, row.part);
  const remedy = remedyText(row, remedies);
  return {
    id: `strength.${slug(row.quantity)}:${leftOf(row.part)}`,
    severity: severityOf(row, isBeyondYield),
    question: 'hold',
    part: leftOf(row.part),
    ...(path === undefined ? {} : { path }),
    what: `"${row.part}", ${row.where}, ${one?.name ?? row.case}: ${row.quantity} is ${sayValue(row.value, row)}; ${isLeast ? 'at least' : 'at most'} ${sayValue(row.limit, row)} is asked for.`,
    value: row.value,
    limit: row.limit,
    margin: isLeast ? row.value - row.limit : row.limit - row.value,
    kind: row.kind,
    why: `${one ? `${one.basis} ` : ''}${isBeyondYield ? 'The calculated stress passes yield: it bends for good.' : whyOf(row)}`,
    ...(remedy === undefined ? {} : { remedy }),
    source: row.source,
  };
}

/** A power rating is for 15 000 h of full power; a chain that is asked more wears sooner, it does not let go. */
const severityOf = ({ quantity }: UtilizationRow, isBeyondYield: boolean): Finding['severity'] =>
  quantity === 'rated over design power' ? 'note' : isBeyondYield ? 'stop' : 'caution';

const sayValue = (value: number, { kind }: UtilizationRow): string =>
  kind === 'ratio'
    ? `${Number(value.toPrecision(3))}`
    : say(value, kind, kind === 'pressure' ? 1 : undefined);

function whyOf({ quantity }: UtilizationRow): string {
  if (quantity.startsWith('fatigue'))
    return 'A crack grows from a keyseat or a loaded place long before anything bends.';
  if (quantity.startsWith('rated over'))
    return 'The rating is for 15 000 hours; over it the chain wears out sooner, by wear of pins or broken rollers.';
  if (quantity.startsWith('throat'))
    return 'The weld is asked for more than the published allowable stress, which holds for a sound full fillet.';
  if (quantity.startsWith('life')) return 'One bearing in ten fails before this life.';
  if (quantity.startsWith('pull on'))
    return 'A joint that slips lets the chain go slack and works its bolts loose.';
  if (quantity.startsWith('tilt')) return 'Balls that run across their groove wear and run hot.';
  return 'Less than the margin that was asked for is left against yield.';
}

/** What was tried by running the check again. */
function remedyText(row: UtilizationRow, remedies: readonly Remedy[]): string | undefined {
  const tried = remedies.find(
    (remedy) => leftOf(remedy.row.part) === leftOf(row.part) && remedy.row.quantity === row.quantity,
  );
  if (tried) {
    const now = `${Math.round(tried.utilization * 100)} % of the limit`;
    return tried.holds
      ? `${tried.what}: tried, it then comes to ${now}.`
      : `${tried.what}: tried, it comes to ${now} from ${Math.round(row.utilization * 100)} %, which is not enough by itself; another tube or gusset must share the load.`;
  }
  if (row.quantity.startsWith('rated over'))
    return 'A larger chain, more teeth on the small sprocket, or accept a shorter life and look at it often.';
  return undefined;
}

function pathOf({ frame }: Strength, part: string): string | undefined {
  const name = leftOf(part);
  if (frame.welds.some(({ line }) => leftOf(line) === name) && name !== 'neck') return `frame.tubes.${name}`;
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
    if (weld.life.low >= settings.life || seen.has(leftOf(weld.part))) return false;
    seen.add(leftOf(weld.part));
    return true;
  });
  return short.map((weld) => ({
    id: `strength.weld-life:${leftOf(weld.part)}`,
    severity: 'caution',
    question: 'hold',
    part: leftOf(weld.part),
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

/** How much an outboard bearing brings, side by side. */
function outboardNotes({ drive }: Strength): Finding[] {
  return drive.shafts.flatMap(({ id, outboard }): Finding[] => {
    if (!outboard) return [];
    const { with: held, without } = outboard;
    return [
      {
        id: `strength.outboard:${id}`,
        severity: 'note',
        question: 'hold',
        part: id,
        what: `${outboard.isThere ? 'The' : 'An added'} outboard bearing of "${id}": largest stress ${say(held.maxStress, 'pressure', 1)} with it, ${say(without.maxStress, 'pressure', 1)} without; most loaded bearing ${say(held.maxReaction, 'force')} and ${say(without.maxReaction, 'force')}; tilt ${(held.maxSlope * 1000).toFixed(2)} and ${(without.maxSlope * 1000).toFixed(2)} mrad.`,
        why: 'It is one more plate to line up; a bearing out of line loads the others.',
        source: derived('continuous beam on rigid bearings'),
      },
    ];
  });
}
