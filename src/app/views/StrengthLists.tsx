import { Button } from 'react-aria-components';
import type { PartUse, WorstPlace } from '../worker/messages.ts';
import { Amount } from './Amount.tsx';
import { useScreen, useWorkshop } from './context.ts';
import { jumpToField, pathOfPart } from './jump.ts';
import { ShakingPart } from './ShakingPart.tsx';
import type { ShownStrength } from './useStrength.ts';

/** The worst places, and the picture's colors as a table. */
export function StrengthLists({
  strength: { summary, picture, caseName },
}: {
  readonly strength: ShownStrength;
}) {
  return (
    // biome-ignore lint/a11y/noNoninteractiveTabindex: what scrolls must be reached by keys
    <section className="strength-lists" aria-label="Use of strength in words" tabIndex={0}>
      {summary && picture?.tubes.length === 0 && (
        <p className="trouble">The frame could not be worked out. {summary.flaws.join('; ')}</p>
      )}
      <h2>Worst places over all load cases</h2>
      <ol className="worst">
        {summary?.worst.map((place) => (
          <WorstItem key={`${place.part} ${place.quantity} ${place.where}`} place={place} />
        ))}
      </ol>
      {picture && <UseTable uses={picture.uses} caseName={caseName} />}
      <ShakingPart />
    </section>
  );
}

function WorstItem({ place }: { readonly place: WorstPlace }) {
  const workshop = useWorkshop();
  const units = useScreen((state) => state.units);
  const { part, where, quantity, value, limit, limitWord } = place;
  const path = pathOfPart(workshop, part);
  return (
    <li className="worst-item">
      <Percent use={place} />
      <div className="worst-text">
        <p>
          <b>{part}</b>, {where}
        </p>
        <p>
          {quantity} <Amount text={value[units]} />; {limitWord} <Amount text={limit[units]} /> is asked for
        </p>
        <p className="hint is-kept">{place.case}</p>
      </div>
      <div className="buttons">
        <Button
          aria-label={`Show case ${place.case}`}
          onPress={() => workshop.screen.setState({ loadCase: place.caseId })}
        >
          Show case
        </Button>
        {path !== undefined && (
          <Button className="button-main" onPress={() => jumpToField(workshop, path)}>
            Go to {path}
          </Button>
        )}
      </div>
    </li>
  );
}

const Percent = ({ use: { percent, isOver } }: { readonly use: PartUse }) => (
  <p className={isOver ? 'percent is-over' : 'percent'}>
    {percent}
    {isOver && <span className="over-word"> over</span>}
  </p>
);

interface UseTableProps {
  readonly uses: readonly PartUse[];
  readonly caseName: string;
}

const UseTable = ({ uses, caseName }: UseTableProps) => (
  <table className="use-table">
    <caption>The most of each part in the picture: {caseName}</caption>
    <thead>
      <tr>
        <th scope="col">Part</th>
        <th scope="col">Use of the allowed stress</th>
      </tr>
    </thead>
    <tbody>
      {uses.map((use) => (
        <tr key={use.part}>
          <th scope="row">{use.part}</th>
          <td>
            <Percent use={use} />
          </td>
        </tr>
      ))}
    </tbody>
  </table>
);
