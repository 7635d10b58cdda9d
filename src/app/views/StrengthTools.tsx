import { Checkbox } from 'react-aria-components';
import { useScreen, useWorkshop } from './context.ts';
import { type ShownStrength, WORST_OF_ALL } from './useStrength.ts';

/** Which load case is shown, and whether the frame is drawn as it moves under it. */
export function StrengthTools({ strength }: { readonly strength: ShownStrength }) {
  const { screen } = useWorkshop();
  const isMoved = useScreen((state) => state.isMoved);
  const { summary, caseId } = strength;
  return (
    <div className="view-tools strength-tools">
      <div className="load-case">
        <span aria-hidden="true">Load case</span>
        <select
          aria-label="Load case"
          value={caseId}
          onChange={(event) => screen.setState({ loadCase: event.target.value })}
        >
          <option value="">{WORST_OF_ALL}</option>
          {summary?.cases.map(({ id, name }) => (
            <option key={id} value={id}>
              {name}
            </option>
          ))}
        </select>
      </div>
      <Checkbox
        className="switch"
        isDisabled={caseId === ''}
        isSelected={isMoved && caseId !== ''}
        onChange={(is) => screen.setState({ isMoved: is })}
      >
        <span className="switch-box" aria-hidden="true" />
        Deformed shape
      </Checkbox>
    </div>
  );
}
