import { expose, transfer } from 'comlink';
import { z } from 'zod';
import { buffersOf } from './solids.ts';
import { createSolver } from './solver.ts';
import { strengthBuffers } from './strength.ts';

// The page's content policy forbids code made from text, which the schema library would try for speed.
z.config({ jitless: true });

const solver = createSolver(() => performance.now());

expose({
  ...solver,
  solids: (revision: number) => {
    const parts = solver.solids(revision);
    return parts && transfer(parts, buffersOf(parts) as ArrayBuffer[]);
  },
  strengthPicture: (revision: number, caseId: string | undefined, isMoved: boolean) => {
    const picture = solver.strengthPicture(revision, caseId, isMoved);
    return picture && transfer(picture, strengthBuffers(picture) as ArrayBuffer[]);
  },
});
