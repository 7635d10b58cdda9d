import type { QuantityKind } from './brand.ts';
import { type GaugeStock, readGauge } from './gauge.ts';
import type { Issue } from './issue.ts';
import { kindFacts } from './kinds.ts';
import { editDistance } from './nearest.ts';
import { NUMBER, readNumber } from './number.ts';
import { bad, good, type Outcome } from './outcome.ts';
import { LONGEST_TEXT, plainText, unitKey } from './text.ts';
import { toSi, type Unit, unitOf, units } from './units.ts';

export interface ReadOptions {
  /** What a bare gauge number (`16 ga`) is the gauge of; steel sheet unless said. Words in the text win. */
  readonly gauge?: GaugeStock;
}

type Form = (text: string, options: ReadOptions) => Outcome<number> | undefined;

/**
 * A text as builders write it, to SI: `8-3/16"`, `5'3"`, `12mm`, `16 ga`, `24°`, `8 ft-lb`, `15 %`.
 * Decimal point only. Never throws and never gives a number that is not finite.
 * @issue unreadable — with what is wanted and an example; not-in-table — a gauge number that is not made
 * @source nist-sp-811, appendix B: factors
 */
export function readQuantity(text: string, kind: QuantityKind, options: ReadOptions = {}): Outcome<number> {
  const trimmed = text.trim();
  if (trimmed === '') return unreadable(text, kind);
  if (text.length > LONGEST_TEXT)
    return unreadable(`${text.slice(0, LONGEST_TEXT)}…`, kind, `in at most ${LONGEST_TEXT} characters`);
  const plain = plainText(trimmed);
  const comma = decimalComma(trimmed, plain, kind);
  if (comma) return comma;
  if (LOOSE_MINUS.test(plain))
    return unreadable(trimmed, kind, 'with its fraction after a space or a hyphen', loosened(plain));
  const remainder = readInchRemainder(plain, kind);
  if (remainder) return remainder;
  const sign = /^[+-] ?/.exec(plain)?.[0] ?? '';
  const body = plain.slice(sign.length);
  const outcome = readBody(body, trimmed, kind, options);
  if (!outcome.ok || !sign.startsWith('-') || outcome.value === 0) return outcome;
  return GAUGE.test(body) ? unreadable(trimmed, kind, 'with a gauge number above 0') : good(-outcome.value);
}

interface Spellings {
  readonly exact: ReadonlyMap<string, Unit>;
  readonly anyCase: ReadonlyMap<string, Unit>;
}

/** Every way to write a unit, by kind. */
const spellings = Object.fromEntries(
  Object.entries(units).map(([kind, list]) => [kind, spellingsOf(list)]),
) as Readonly<Record<QuantityKind, Spellings>>;

const FEET_INCHES = new RegExp(
  `^${NUMBER} ?(?:'|ft\\.?|foot|feet) ?-? ?${NUMBER} ?("|in\\.?|inch|inches)?$`,
  'i',
);
const INCH_REMAINDER = new RegExp(`^(-?)${NUMBER} in ([+-]) (0?\\.\\d+)$`);
const DEGREES = new RegExp(`^${NUMBER} ?(?:°|deg) ?${NUMBER} ?'(?: ?${NUMBER} ?")?$`);
const RATIO = new RegExp(`^${NUMBER} ?: ?${NUMBER}$`);
const PLAIN = new RegExp(`^${NUMBER} ?(.*)$`);
/** `8 -3/16`: eight and, or eight less? */
const LOOSE_MINUS = /\d -(?=\d+ ?\/)/;
const GAUGE = /^(\d+) ?-? ?(gauge|gage|ga|bwg|msg)\b\.? ?(.*)$/i;

/** Forms beyond "number and unit", by kind; the first that recognizes a text answers. */
const forms: Partial<Record<QuantityKind, readonly Form[]>> = {
  length: [readFeetInches, readGaugeText],
  angle: [readDegreesMinutes],
  ratio: [readRatio],
};

function spellingsOf(list: readonly Unit[]): Spellings {
  const exact = new Map<string, Unit>();
  const anyCase = new Map<string, Unit>();
  for (const unit of list)
    for (const spelling of [unitKey(unit.symbol), ...unit.also]) {
      exact.set(spelling, unit);
      anyCase.set(spelling.toLowerCase(), unit);
    }
  return { exact, anyCase };
}

function readBody(body: string, given: string, kind: QuantityKind, options: ReadOptions): Outcome<number> {
  for (const form of forms[kind] ?? []) {
    const outcome = form(body, options);
    if (outcome) return outcome;
  }
  const match = PLAIN.exec(body);
  if (!match) return unreadable(given, kind);
  const value = readNumber(match[1]!);
  if (typeof value === 'string') return unreadable(given, kind, `with ${value}`);
  const unit = findUnit(match[2]!, kind);
  if (!unit) return unreadableUnit(given, match[1]!, match[2]!, kind);
  if (kind === 'count' && !Number.isInteger(value)) return unreadable(given, kind);
  return good(toSi(value, unit));
}

/** Spellings differ by case in shops, but never so that milli becomes mega. */
function findUnit(written: string, kind: QuantityKind): Unit | undefined {
  const key = unitKey(written);
  const spelled = spellings[kind];
  return spelled.exact.get(key) ?? (key === 'mPa' ? undefined : spelled.anyCase.get(key.toLowerCase()));
}

function readFeetInches(text: string): Outcome<number> | undefined {
  const match = FEET_INCHES.exec(text);
  if (!match) return undefined;
  // `5'3` is common; `5 ft 3` without a second unit is not clear.
  if (match[3] === undefined && !text.includes("'")) return undefined;
  const [feet, over] = [readNumber(match[1]!), readNumber(match[2]!)];
  if (typeof over === 'number' && over >= 12) return unreadable(text, 'length', ...carried(feet, over));
  return sum(text, 'length', 'in', [
    [match[1]!, 12],
    [match[2]!, 1],
  ]);
}

/** `5'13"` is a slip for 5'3" or 5'1 3/8"; whoever means 73 inches can write the carried form. */
const carried = (feet: number | string, over: number): readonly [wanted: string, example?: string] =>
  typeof feet === 'number' && Number.isInteger(feet) && Number.isInteger(over)
    ? ['with inches below 12 after feet', `${feet + Math.floor(over / 12)}'${over % 12}"`]
    : ['with inches below 12 after feet'];

const loosened = (plain: string): string => plain.replace(LOOSE_MINUS, (found) => found.replace(' -', ' '));

/** What the printer writes with its `remainder` option; each term has its own sign: `-8 7/16 in - 0.004`. */
function readInchRemainder(text: string, kind: QuantityKind): Outcome<number> | undefined {
  const match = kind === 'length' ? INCH_REMAINDER.exec(text) : null;
  if (!match) return undefined;
  return sum(text, 'length', 'in', [
    [match[2]!, match[1] === '-' ? -1 : 1],
    [match[4]!, match[3] === '-' ? -1 : 1],
  ]);
}

function readDegreesMinutes(text: string): Outcome<number> | undefined {
  const match = DEGREES.exec(text);
  if (!match) return undefined;
  return sum(text, 'angle', '°', [
    [match[1]!, 1],
    [match[2]!, 1 / 60],
    [match[3] ?? '0', 1 / 3600],
  ]);
}

function readRatio(text: string): Outcome<number> | undefined {
  const match = RATIO.exec(text);
  if (!match) return undefined;
  const [top, bottom] = [readNumber(match[1]!), readNumber(match[2]!)];
  if (typeof top === 'string') return unreadable(text, 'ratio', `with ${top}`);
  if (typeof bottom === 'string') return unreadable(text, 'ratio', `with ${bottom}`);
  const ratio = top / bottom;
  return Number.isFinite(ratio) ? good(ratio) : unreadable(text, 'ratio', 'with a second number above 0');
}

/** Terms of one unit added up, each with its weight. */
function sum(
  text: string,
  kind: QuantityKind,
  symbol: string,
  terms: readonly (readonly [written: string, weight: number])[],
): Outcome<number> {
  let total = 0;
  for (const [written, weight] of terms) {
    const value = readNumber(written);
    if (typeof value === 'string') return unreadable(text, kind, `with ${value}`);
    total += weight * value;
  }
  return good(toSi(total, unitOf(kind, symbol)));
}

function readGaugeText(text: string, options: ReadOptions): Outcome<number> | undefined {
  const match = GAUGE.exec(text);
  if (!match) return undefined;
  const named = gaugeStock(match[2]!.toLowerCase(), match[3]!.toLowerCase());
  if (named === 'unknown') {
    const wanted = 'as a gauge of sheet (steel), tube or aluminum, or the thickness itself';
    return unreadable(text, 'length', wanted, `${match[1]} ga tube or 1.6 mm`);
  }
  return readGauge(Number(match[1]), named ?? options.gauge ?? 'steel-sheet');
}

/** Which stock the words after a gauge number name; undefined when there are none. */
function gaugeStock(system: string, words: string): GaugeStock | 'unknown' | undefined {
  const isTube = /^(?:steel )?(?:tube|tubing|tube wall|wall)$/.test(words);
  const isSheet = /^(?:steel|sheet|steel sheet|sheet steel)$/.test(words);
  if (system === 'bwg') return isTube || words === '' ? 'tube-wall' : 'unknown';
  if (system === 'msg') return isSheet || words === '' ? 'steel-sheet' : 'unknown';
  if (words === '') return undefined;
  if (isTube) return 'tube-wall';
  if (isSheet) return 'steel-sheet';
  return /^(?:aluminum|aluminium)(?: sheet)?$/.test(words) ? 'aluminum-sheet' : 'unknown';
}

function decimalComma(given: string, plain: string, kind: QuantityKind): Outcome<number> | undefined {
  if (!/\d ?, ?\d|(?:^|[ +-]),\d/.test(plain)) return undefined;
  const example = /^[+-]?\d{1,3},\d{3}(?!\d)/.test(plain)
    ? `${plain.replace(',', '.')} or ${plain.replace(',', '')}`
    : plain.replace(',', '.');
  const reads = !plain.replace(',', '').includes(',') && readQuantity(plain.replace(',', '.'), kind).ok;
  return unreadable(given, kind, 'with a decimal point, not a comma', reads ? example : undefined);
}

function unreadableUnit(given: string, number: string, written: string, kind: QuantityKind): Outcome<number> {
  const symbols = units[kind].map((unit) => unit.symbol).filter((symbol) => symbol !== '');
  const listed = symbols.length > 0 ? `in ${symbols.slice(0, 5).join(', ')}` : undefined;
  if (written === '')
    return unreadable(given, kind, 'with its unit', withUnits(number.replace(/\.$/, ''), kind));
  if (!/^\D+\d?$/.test(written) || !/[a-z°%"']/i.test(written)) return unreadable(given, kind);
  const other = otherKind(written);
  const suggestion = nearestUnit(written, kind, other !== undefined);
  const example = suggestion === undefined ? undefined : withUnit(number, suggestion);
  if (other === undefined) return unreadable(given, kind, listed, example);
  return unreadable(given, kind, `${listed ?? 'without a unit'} ("${written}" measures ${other})`, example);
}

/** What the unit would measure, where it is a unit of another kind. */
function otherKind(written: string): string | undefined {
  const kinds = Object.keys(units) as QuantityKind[];
  const found = kinds.find((kind) => findUnit(written, kind) !== undefined);
  return found && kindFacts[found].name;
}

/**
 * Symbol of the unit whose spelling is nearest; a replaced letter is a likelier slip than a lost one.
 * Of a unit that measures something else, only a longer or shorter form is likely meant: lbf for lb, not km for kg.
 */
function nearestUnit(written: string, kind: QuantityKind, isOtherKind: boolean): string | undefined {
  const key = unitKey(written).toLowerCase();
  let best: { readonly symbol: string; readonly cost: number } | undefined;
  for (const [spelling, unit] of spellings[kind].anyCase) {
    const isForm = spelling.startsWith(key) || key.startsWith(spelling);
    if (spelling === '' || (isOtherKind && !isForm)) continue;
    const distance = editDistance(key, spelling);
    const cost = distance + Math.abs(key.length - spelling.length) / 10;
    const isNear = distance <= Math.max(1, Math.floor(key.length / 3));
    if (isNear && cost < (best?.cost ?? Number.POSITIVE_INFINITY)) best = { symbol: unit.symbol, cost };
  }
  return best?.symbol;
}

function withUnits(number: string, kind: QuantityKind): string {
  const { metric, customary } = kindFacts[kind];
  const first = withUnit(number, metric.symbol);
  return customary.symbol === metric.symbol ? first : `${first} or ${withUnit(number, customary.symbol)}`;
}

const withUnit = (number: string, symbol: string): string =>
  symbol === '°' || symbol === '' ? `${number}${symbol}` : `${number} ${symbol}`;

function unreadable(given: string, kind: QuantityKind, more?: string, example?: string): Outcome<number> {
  const { name, example: usual } = kindFacts[kind];
  const issue: Issue = {
    code: 'unreadable',
    path: '',
    given,
    wanted: more === undefined ? name : `${name} ${more}`,
    example: example ?? usual,
  };
  return bad(issue);
}
