/** Random numbers in [0, 1) from a seed (mulberry32), so that a case can be repeated. */
export function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (state + 0x6d2b79f5) >>> 0;
    let mixed = Math.imul(state ^ (state >>> 15), state | 1);
    mixed ^= mixed + Math.imul(mixed ^ (mixed >>> 7), mixed | 61);
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

type Random = () => number;

const pick = <T>(list: readonly T[], random: Random): T => list[Math.floor(random() * list.length)] as T;

/** Numbers that programs trip over. */
const NUMBERS: readonly number[] = [
  0,
  -0,
  1,
  -1,
  0.5,
  1e-9,
  -1e-9,
  1e-300,
  5e-324,
  3,
  7.25,
  45,
  90,
  180,
  -360,
  1000,
  1e6,
  1e21,
  1e300,
  -1e300,
  Number.MAX_SAFE_INTEGER,
  Number.MAX_VALUE,
];
/** Texts that readers trip over. */
const TEXTS: readonly string[] = [
  '',
  ' ',
  '0',
  '-1',
  '1e999',
  'nan mm',
  '∞ mm',
  '1/0 in',
  '0/0',
  '1 1/2',
  '12 mm',
  '3/4 in',
  '1e9 mm',
  '16 ga',
  '90°',
  '__proto__',
  'constructor',
  'toString',
  'hasOwnProperty',
  'neck',
  'origin',
  'rearAxle',
  'engine',
  'final',
  'solve',
  '.right',
  'rail.right',
  '\u0000',
  '\ud800',
  '😀',
  'ＭＭ',
  '１２ mm',
  '½ in',
  'M8',
  '#35',
  '6203',
  'a'.repeat(5000),
  '\u202e12 mm',
  '4.10/3.50-6',
  '90/90-10',
  '𝟙𝟚',
];
/** Pieces of text that break JSON, or nearly. */
const SCRAPS: readonly string[] = [
  '"',
  '\\',
  '{',
  '}',
  '[',
  ']',
  ',',
  ':',
  'null',
  'true',
  '-',
  '1e400',
  '\u0000',
  '\ufeff',
  '//',
  '/* */',
  '\\u12',
  'é',
  '😀',
  '\ud83d',
  '0x10',
  '"__proto__": 1,',
  '"version": 1,',
  '\n',
  '[['.repeat(40),
  '{"a":'.repeat(80),
  '9'.repeat(400),
];

/** One to four garblings of a text: a piece put in, cut out, doubled, moved or a digit changed. */
export function mutatedText(text: string, random: Random): string {
  let out = text;
  for (let n = 1 + Math.floor(random() * 4); n > 0; n--) out = garbled(out, random);
  return out;
}

function garbled(text: string, random: Random): string {
  const at = Math.floor(random() * (text.length + 1));
  const length = Math.floor(random() ** 3 * 200);
  const [before, after] = [text.slice(0, at), text.slice(at)];
  switch (Math.floor(random() * 8)) {
    case 0:
      return before + pick(SCRAPS, random) + after;
    case 1:
      return before + after.slice(length);
    case 2:
      return before + after.slice(0, length) + after;
    case 3:
      return before + after.slice(length) + after.slice(0, length);
    case 4: {
      const lines = text.split('\n');
      lines.splice(Math.floor(random() * lines.length), 1);
      return lines.join('\n');
    }
    default:
      return digitChanged(text, at, random);
  }
}

/** Changes a digit, a sign or a point at or after a place, so that most of these still are files. */
function digitChanged(text: string, at: number, random: Random): string {
  const found = text.slice(at).search(/\d/);
  if (found < 0) return text;
  const digit = pick(['0', '1', '5', '9', '99', '-1', '.5', '1e3', '1e-7', '0.0001'], random);
  return text.slice(0, at + found) + digit + text.slice(at + found + 1);
}

/** A copy of a JSON value with one to three of its values, keys or list entries changed. */
export function mutatedValue(value: unknown, random: Random): unknown {
  let out = structuredClone(value);
  for (let n = 1 + Math.floor(random() ** 2 * 3); n > 0; n--) out = changedSomewhere(out, random);
  return out;
}

type Place = { readonly parent: Record<string | number, unknown>; readonly key: string | number };

function placesIn(value: unknown, places: Place[] = []): Place[] {
  if (typeof value !== 'object' || value === null) return places;
  const parent = value as Record<string | number, unknown>;
  const keys = Array.isArray(value) ? value.map((_, i) => i) : Object.keys(value);
  for (const key of keys) {
    places.push({ parent, key });
    placesIn(parent[key], places);
  }
  return places;
}

function changedSomewhere(value: unknown, random: Random): unknown {
  if (random() < 0.002) return pick<unknown>([null, [], 'text', 5, {}, [[]]], random);
  const places = placesIn(value);
  if (places.length === 0) return value;
  const { parent, key } = pick(places, random);
  const old = parent[key];
  switch (Math.floor(random() * 24)) {
    case 0:
      remove(parent, key);
      break;
    case 1:
      put(parent, random() < 0.5 ? `${key}-2` : pick(TEXTS, random), structuredClone(old));
      break;
    case 2:
      parent[key] = wrongType(old, random);
      break;
    case 3:
      parent[key] = structuredClone(pick(places, random).parent);
      break;
    case 4: {
      const other = pick(places, random);
      parent[key] = structuredClone(other.parent[other.key]);
      break;
    }
    default:
      parent[key] = sameType(old, random);
  }
  return value;
}

function remove(parent: Record<string | number, unknown>, key: string | number): void {
  if (Array.isArray(parent)) parent.splice(key as number, 1);
  else delete parent[key];
}

function put(parent: Record<string | number, unknown>, key: string, value: unknown): void {
  if (Array.isArray(parent)) parent.push(value);
  else Object.defineProperty(parent, key, { value, enumerable: true, writable: true, configurable: true });
}

function wrongType(old: unknown, random: Random): unknown {
  const deep = Array.from({ length: 200 }).reduce<unknown>((inner) => ({ a: [inner] }), 1);
  return pick<unknown>(
    [null, true, [], {}, [old], { x: old }, deep, pick(NUMBERS, random), pick(TEXTS, random)],
    random,
  );
}

function sameType(old: unknown, random: Random): unknown {
  if (typeof old === 'number') {
    const factor = pick([0, 0.5, 0.9, 1.1, 2, 10, -1, 0.01], random);
    return random() < 0.25 ? pick(NUMBERS, random) : old * factor;
  }
  if (typeof old === 'boolean') return !old;
  if (typeof old !== 'string') return Array.isArray(old) ? old.toReversed() : wrongType(old, random);
  const number = old.match(/\d+/);
  if (number && random() < 0.8)
    return old.replace(
      number[0],
      `${Math.round(Number(number[0]) * pick([0, 0.5, 0.9, 1.1, 2, 10], random))}`,
    );
  return pick(TEXTS, random);
}

/** Path of the first number in a value that is infinite or none at all; undefined when there is no such number. */
export function firstNotFinite(value: unknown, path = ''): string | undefined {
  if (typeof value === 'number') return Number.isFinite(value) ? undefined : `${path} (${value})`;
  if (typeof value === 'string')
    return /\b(NaN|Infinity|undefined)\b/.test(value) ? `${path} ("${value}")` : undefined;
  if (typeof value !== 'object' || value === null) return undefined;
  for (const [key, inner] of Object.entries(value)) {
    const found = firstNotFinite(inner, path === '' ? key : `${path}.${key}`);
    if (found !== undefined) return found;
  }
  return undefined;
}
