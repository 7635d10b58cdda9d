import type { Finding } from '../core/findings/index.ts';
import type { Change } from '../core/fit/index.ts';
import type { Figure, Outcome, UnitSystem } from '../core/quantity/index.ts';
import type { PackFile } from './writePack.ts';

/** What the command line asks of a solved build; the rest of it only passes through. */
export interface Solved {
  readonly findings: readonly Finding[];
  readonly figures: readonly Figure[];
  /** What the readings or the variant moved; parts already made first. */
  readonly moved?: readonly Change[];
}

export interface PackOptions {
  readonly fonts: { readonly regular: Uint8Array; readonly bold: Uint8Array };
  /** ISO 8601; the core has no clock. */
  readonly date: string;
  readonly units: UnitSystem;
  readonly onProgress?: (what: string) => void;
}

/** What the files of the shop are drawn from: a build as its text, which another thread can be given. */
export interface ShopRequest extends Omit<PackOptions, 'onProgress'> {
  readonly text: string;
  readonly variant: string | undefined;
}

/** Files that are being drawn. */
export interface ShopFiles {
  /** Throws where the drawing failed. */
  readonly files: AsyncIterable<PackFile> | Iterable<PackFile>;
  /** Gives up what is not done yet; to be called in any case. */
  readonly stop: () => Promise<void>;
}

/** The road from a build file to a pack, as the verbs use it; `Build` and `Solution` are opaque here. */
export interface Core<Build = unknown, Solution extends Solved = Solved> {
  readBuild(text: string, options?: { readonly variant?: string }): Outcome<Build>;
  /** @param from what to tell the changes against; left out: the build as typed */
  solve(build: Build, from?: Build): Solution;
  /** The files that tell what was found. */
  bookFiles(solution: Solution, options: PackOptions): AsyncIterable<PackFile> | Iterable<PackFile>;
  /** Starts on the files that parts are made by, beside what is done meanwhile: they need the placed bike, no verdict. */
  startShopFiles(request: ShopRequest): ShopFiles;
  buildJsonSchema(): object;
}
