import { Checkbox } from 'react-aria-components';
import { useScreen, useWorkshop } from './context.ts';

export function RiderSwitch() {
  const { screen } = useWorkshop();
  const withRider = useScreen((state) => state.withRider);
  return (
    <Checkbox className="switch" isSelected={withRider} onChange={(is) => screen.setState({ withRider: is })}>
      <span className="switch-box" aria-hidden="true" />
      Rider
    </Checkbox>
  );
}
