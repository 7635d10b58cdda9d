import type { Proof } from '../../core/index.ts';
import { movedText, type SlowStrength, shakenRange } from '../../core/strength/index.ts';
import type { ScreenShaking } from './messages.ts';
import { printed } from './print.ts';

/** Frequencies of the frame and its buckling as a whole, printed. */
export function screenShaking({ strength }: Proof, shaking: SlowStrength): ScreenShaking {
  const { frequencies, engine, buckling, flaws } = shaking;
  const name = strength.cases.find(({ id }) => id === buckling?.case)?.name;
  return {
    frequencies: frequencies.map(({ angularFrequency, moved, driven: { firing, turning } }) => ({
      hertz: hertz(angularFrequency),
      what: movedText(moved),
      ...(firing === undefined ? {} : { firing: printed(firing, 'angularSpeed') }),
      ...(turning === undefined ? {} : { turning: printed(turning, 'angularSpeed') }),
    })),
    ...(engine
      ? {
          engine: {
            idle: printed(engine.idle, 'angularSpeed'),
            governed: printed(engine.governed, 'angularSpeed'),
            isIdleGiven: engine.isIdleGiven,
            fires: engine.fires,
            range: shakenRange(engine).map(hertz).join(' to '),
          },
        }
      : {}),
    ...(buckling
      ? {
          buckling: {
            factor: `${Number(buckling.factor.toPrecision(2))}`,
            case: name ?? buckling.case,
            what: movedText(buckling.moved),
          },
        }
      : {}),
    flaws,
  };
}

const hertz = (angularFrequency: number): string => `${(angularFrequency / (2 * Math.PI)).toFixed(1)} Hz`;
