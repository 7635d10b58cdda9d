import type { Build, StackEntry } from '../build/index.ts';
import type { SourceRef } from '../quantity/index.ts';
import type { PlacedStack, StackGap } from './bike.ts';

/** A rule that a stack breaks or is near; turned into a finding by the findings room. */
export interface StackFlaw {
  readonly stack: string;
  readonly rule:
    | StackGap['reason']
    | 'misfit'
    | 'bore-under-shaft'
    | 'needs-sleeve'
    | 'axle-too-short'
    | 'thread-out'
    | 'nut-off-thread'
    | 'thread-in-bearing'
    | 'thin-spacer'
    | 'hub-width'
    | 'rim-off-center'
    | 'disc-off-caliper'
    | 'shaft-too-short'
    | 'no-plane';
  readonly items: readonly string[];
  /** Value and limit [m]. */
  readonly value: number;
  readonly limit: number;
  readonly severity: 'stop' | 'caution' | 'note';
  readonly remedy: string;
  readonly source: SourceRef;
}

/** A stack with what the file says of it. */
export interface FlawContext {
  readonly build: Build;
  readonly stack: PlacedStack;
  readonly entry: StackEntry;
}
