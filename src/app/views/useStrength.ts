import { useMemo } from 'react';
import type { DrawnPart } from '../three/solid.ts';
import type { ScreenStrength, SolidPart, StrengthPicture } from '../worker/messages.ts';
import { useScreen } from './context.ts';
import { useDrawn } from './useDrawn.ts';

/** Not drawn beside the colored tubes: what they stand for, unless they are drawn moved away from it. */
const HIDDEN: ReadonlySet<string> = new Set(['rider', 'frame']);
const HIDDEN_WHEN_MOVED: ReadonlySet<string> = new Set(['rider']);

export interface ShownStrength {
  readonly summary: ScreenStrength | undefined;
  readonly picture: StrengthPicture | undefined;
  /** The colored tubes, and the bike as it stands faintly. */
  readonly drawn: readonly DrawnPart[] | undefined;
  /** The load case chosen, as far as this bike has it; '' is the worst of all. */
  readonly caseId: string;
  readonly caseName: string;
}

export const WORST_OF_ALL = 'Worst of all cases';

/** How the frame holds under the chosen load case; asked for only while it is shown. */
export function useStrength(solids: readonly SolidPart[] | undefined): ShownStrength {
  const isShown = useScreen((state) => state.solidShows === 'strength');
  const chosen = useScreen((state) => state.loadCase);
  const isMoved = useScreen((state) => state.isMoved);
  const summary = useDrawn(`strength ${isShown}`, async (solver, revision) =>
    isShown ? solver.strength(revision) : undefined,
  );
  const found = summary?.cases.find(({ id }) => id === chosen);
  const caseId = found?.id ?? '';
  const picture = useDrawn(`strength ${isShown} ${caseId} ${isMoved}`, async (solver, revision) =>
    isShown ? solver.strengthPicture(revision, caseId === '' ? undefined : caseId, isMoved) : undefined,
  );
  const drawn = useMemo(() => {
    if (!picture || !solids) return undefined;
    const hidden = picture.factor === undefined ? HIDDEN : HIDDEN_WHEN_MOVED;
    return [...picture.tubes, ...faint(solids.filter(({ look }) => !hidden.has(look)))];
  }, [picture, solids]);
  return { summary, picture, drawn, caseId, caseName: found?.name ?? WORST_OF_ALL };
}

const faint = (parts: readonly SolidPart[]): DrawnPart[] =>
  parts.map(({ name, part, positions, normals, edges }) => ({
    name,
    part,
    look: 'faint',
    positions,
    normals,
    edges,
  }));
