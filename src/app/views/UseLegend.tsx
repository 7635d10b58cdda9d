import { OVER_STEP, STRIPE_COLOR, USE_STEPS, type UseStep } from '../three/useScale.ts';
import { useScreen } from './context.ts';
import type { ShownStrength } from './useStrength.ts';

/** What the colors mean, what the load case is, and how many times its movement is drawn. */
export function UseLegend({ strength }: { readonly strength: ShownStrength }) {
  const units = useScreen((state) => state.units);
  const { summary, picture, caseId } = strength;
  const basis = summary?.cases.find(({ id }) => id === caseId)?.basis;
  return (
    <div className="use-legend">
      <p>Use of the allowed stress</p>
      <ul aria-label="Color scale">
        {[...USE_STEPS, OVER_STEP].map((step) => (
          <li key={step.label}>
            <span className="use-color" style={{ background: backgroundOf(step) }} aria-hidden="true" />
            {step.label}
          </li>
        ))}
      </ul>
      {picture?.largest && (
        <p className="use-movement">
          Largest movement {picture.largest[units]}
          {picture.factor && <b>, drawn {picture.factor} times as large</b>}
        </p>
      )}
      <p className="hint is-kept use-basis">
        {basis ?? 'Choose one load case to see what it does and how the frame moves.'}
      </p>
    </div>
  );
}

const backgroundOf = ({ color }: UseStep): string =>
  color === OVER_STEP.color
    ? `repeating-linear-gradient(90deg, ${color} 0 6px, ${STRIPE_COLOR} 6px 12px)`
    : color;
