import type { Figure, FigureInput } from '../../../quantity/index.ts';
import { movedText } from './movedText.ts';
import type { SlowStrength } from './slowStrength.ts';

const VIBRATION = { key: 'bathe-1996', where: 'chapter 11' };
const BUCKLING = { key: 'bathe-1996', where: 'section 6.8.2' };

/** Figures of the frame's frequencies and of its buckling as a whole. */
export function shakingFigures({ frequencies, engine, buckling }: SlowStrength): readonly Figure[] {
  return [
    ...frequencies.map(({ angularFrequency, moved, driven }, i): Figure => {
      const inputs: FigureInput[] = [
        ...(driven.firing === undefined
          ? []
          : [{ name: 'engine speed that fires at it', value: driven.firing, kind: 'angularSpeed' as const }]),
        ...(driven.turning === undefined
          ? []
          : [
              { name: 'engine speed that turns at it', value: driven.turning, kind: 'angularSpeed' as const },
            ]),
        ...(engine
          ? [
              { name: 'idle', value: engine.idle, kind: 'angularSpeed' as const },
              { name: 'governed', value: engine.governed, kind: 'angularSpeed' as const },
            ]
          : []),
      ];
      return {
        id: `strength.frequency.${i + 1}`,
        symbol: 'f',
        name: `natural frequency of the frame, ${movedText(moved)}`,
        value: angularFrequency / (2 * Math.PI),
        kind: 'frequency',
        formula: 'K·x = (2·π·f)²·M·x',
        inputs,
        source: VIBRATION,
      };
    }),
    ...(buckling
      ? [
          {
            id: 'strength.frameBuckling',
            symbol: 'λ',
            name: `factor on all loads of case ${buckling.case} until the frame buckles, ${movedText(buckling.moved)}`,
            value: buckling.factor,
            kind: 'ratio' as const,
            formula: 'K·x = −λ·Kg·x',
            inputs: [],
            source: BUCKLING,
          },
        ]
      : []),
  ];
}
