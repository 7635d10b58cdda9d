import table from '../../../data/standards/boltClasses.json' with { type: 'json' };
import {
  bad,
  good,
  inches,
  megapascals,
  mm,
  type Outcome,
  type Pressure,
  type SourceRef,
} from '../quantity/index.ts';
import { ksi } from './ksi.ts';

/** Strength of a bolt of one class and size. */
export interface BoltClass {
  /** `8.8`, `grade 5`. */
  readonly name: string;
  /** Sp, proof strength [Pa]. */
  readonly proof: Pressure;
  /** Sy, yield or 0.2 % proof stress [Pa]. */
  readonly yield: Pressure;
  /** Sut, tensile strength [Pa]. */
  readonly tensile: Pressure;
  readonly source: SourceRef;
}

/** A named factor of the bolt tables. */
export interface BoltFactor {
  readonly name: string;
  readonly value: number;
  readonly source: SourceRef;
}

const NEARLY = 1e-7;

/** Names of the classes, each once. */
export const boltClassNames: readonly string[] = [...new Set(table.rows.map((row) => row.name))];

/** K, torque factor by the finish of the thread. */
export const torqueFactors: readonly BoltFactor[] = table.torqueFactors.map(({ name, k, source }) => ({
  name,
  value: k,
  source,
}));

/** ks, share of the slip load by the shape of the hole. */
export const slipHoles: readonly BoltFactor[] = table.slipHoles.map(({ name, ks, source }) => ({
  name,
  value: ks,
  source,
}));

/** µ, slip factor by the state of the faces. */
export const slipFrictions: readonly BoltFactor[] = table.slipFrictions.map(({ name, mu, source }) => ({
  name,
  value: mu,
  source,
}));

/**
 * A property class (`8.8`) or grade (`grade 5`) at a bolt diameter [m].
 * @issue not-in-table — no such class, or none at that size
 * @source iso-898-1, mechanical properties; sae-j429, mechanical requirements
 */
export function boltClass(text: string, diameter: number): Outcome<BoltClass> {
  const name = plainClass(text);
  const row = table.rows.find(
    (one) => one.name === name && diameter > lowest(one) + NEARLY && diameter <= highest(one) + NEARLY,
  );
  if (!row) return bad({ code: 'not-in-table', path: '', given: text, nearest: boltClassNames });
  return good(
    row.proofMpa === undefined
      ? {
          name,
          proof: ksi(row.proofKsi!),
          yield: ksi(row.yieldKsi!),
          tensile: ksi(row.tensileKsi!),
          source: row.source,
        }
      : {
          name,
          proof: megapascals(row.proofMpa),
          yield: megapascals(row.yieldMpa!),
          tensile: megapascals(row.tensileMpa!),
          source: row.source,
        },
  );
}

type Row = (typeof table.rows)[number];

const lowest = (row: Row): number => (row.overMm === undefined ? inches(row.overIn!) : mm(row.overMm));
const highest = (row: Row): number => (row.toMm === undefined ? inches(row.toIn!) : mm(row.toMm));

/**
 * The table's name of a property class or grade, whatever the size of the bolt.
 * @issue not-in-table
 */
export function findBoltClassName(text: string): Outcome<string> {
  const name = plainClass(text);
  if (boltClassNames.includes(name)) return good(name);
  return bad({ code: 'not-in-table', path: '', given: text, nearest: boltClassNames });
}

function plainClass(text: string): string {
  const plain = text.trim().toLowerCase();
  const grade = /^(?:sae\s*)?(?:grade|gr\.?|g)\s*(\d+)$/.exec(plain)?.[1];
  return grade === undefined ? plain.replace(/^class\s*/, '') : `grade ${grade}`;
}
