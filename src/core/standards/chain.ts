import table from '../../../data/standards/chain.json' with { type: 'json' };
import type { Force, Length, Outcome, SourceRef } from '../quantity/index.ts';
import { bad, good } from '../quantity/index.ts';

/** One single-strand chain of the table. */
export interface Chain {
  /** Trade designation, e.g. `#40` or `428`. */
  readonly name: string;
  /** Other designations of the same chain, e.g. `40`, `08A`. */
  readonly aliases: readonly string[];
  /** `bushing`: no rollers turn on the bushings; the diameter below is that of the bushing. */
  readonly kind: 'roller' | 'bushing';
  readonly family: 'transmission' | 'motorcycle';
  /** P, pitch [m]. */
  readonly pitch: Length;
  /** Dr, largest roller (or bushing) diameter [m]. */
  readonly rollerDiameter: Length;
  /** W, width between the inner plates [m]. */
  readonly innerWidth: Length;
  /** Dp, pin diameter [m]. */
  readonly pinDiameter: Length;
  /** Thickness of one plate, standard series [m]. */
  readonly plateThickness: Length;
  /** Depth of the inner plate, across the chain in the sprocket's plane [m]. */
  readonly plateHeight: Length;
  /** Chain center to the far end of the joining link's pins: what must clear tire and frame [m]. */
  readonly halfWidth: Length;
  /** True when `halfWidth` is an estimate and the chain in hand has to be measured. */
  readonly halfWidthEstimated: boolean;
  /** Minimum ultimate tensile strength [N]. */
  readonly minimumTensileStrength: Force;
  /** Average tensile strength of makers' sheets [N]; higher than the minimum, absent when not known. */
  readonly averageTensileStrength?: Force;
  /** Mass per length [kg/m]. */
  readonly lineMass: number;
  readonly sources: Readonly<{
    dimensions: SourceRef;
    width: SourceRef;
    minimumTensileStrength: SourceRef;
    averageTensileStrength?: SourceRef;
    mass: SourceRef;
  }>;
}

type Row = (typeof table.rows)[number];

/** How many near designations an error offers. */
const NEAREST_COUNT = 3;

/** All chains of the table, from the smallest pitch to the largest. */
export const chains: readonly Chain[] = table.rows.map(chainOfRow);

const byDesignation: ReadonlyMap<string, Chain> = new Map(
  chains.flatMap((chain) =>
    [chain.name, ...chain.aliases].map((name) => [plainDesignation(name), chain] as const),
  ),
);

/**
 * The chain of a trade or ISO designation: `#40`, `40`, `No. 40`, `08A` and `08A-1` are one chain.
 * @issue not-in-table — with the nearest designations
 * @source asme-b29-1, general chain dimensions; iso-10190, motorcycle chains
 */
export function findChain(name: string): Outcome<Chain> {
  const chain = byDesignation.get(plainDesignation(name));
  if (chain) return good(chain);
  return bad({ code: 'not-in-table', path: '', given: name, nearest: nearestDesignations(name) });
}

function plainDesignation(name: string): string {
  return name
    .toLowerCase()
    .replace(/\s+/g, '')
    .replace(/^(ansi|iso|no\.?|#)+/, '');
}

function nearestDesignations(name: string): readonly string[] {
  const number = Number.parseInt(name.replace(/\D+/g, ''), 10);
  if (!Number.isFinite(number)) return chains.map((chain) => chain.name);
  const distance = (chain: Chain) => Math.abs(Number.parseInt(chain.name.replace(/\D+/g, ''), 10) - number);
  return [...chains]
    .sort((a, b) => distance(a) - distance(b))
    .slice(0, NEAREST_COUNT)
    .map((chain) => chain.name);
}

function chainOfRow(row: Row): Chain {
  const length = (millimeters: number) => (millimeters / 1000) as Length;
  return {
    name: row.name,
    aliases: row.aliases,
    kind: row.kind === 'bushing' ? 'bushing' : 'roller',
    family: row.family === 'motorcycle' ? 'motorcycle' : 'transmission',
    pitch: length(row.pitchMm),
    rollerDiameter: length(row.rollerDiameterMm),
    innerWidth: length(row.innerWidthMm),
    pinDiameter: length(row.pinDiameterMm),
    plateThickness: length(row.plateThicknessMm),
    plateHeight: length(row.plateHeightMm),
    halfWidth: length(row.halfWidthMm),
    halfWidthEstimated: row.halfWidthEstimated,
    minimumTensileStrength: row.minimumTensileStrengthN as Force,
    ...(row.averageTensileStrengthN === undefined
      ? {}
      : { averageTensileStrength: row.averageTensileStrengthN as Force }),
    lineMass: row.massKgPerM,
    sources: row.sources,
  };
}
