import { useEffect, useMemo, useRef } from 'react';
import { Button, Radio, RadioGroup } from 'react-aria-components';
import type { BikeView } from '../three/bikeView.ts';
import { useScreen, useWorkshop } from './context.ts';
import { PartList } from './PartList.tsx';
import { RiderSwitch } from './RiderSwitch.tsx';
import { SolidPane } from './SolidPane.tsx';
import { StrengthLists } from './StrengthLists.tsx';
import { StrengthTools } from './StrengthTools.tsx';
import { UseLegend } from './UseLegend.tsx';
import { useBikeView } from './useBikeView.ts';
import { useDrawn } from './useDrawn.ts';
import { useMarked } from './useMarked.ts';
import { useStrength } from './useStrength.ts';

const NO_RIDER: ReadonlySet<string> = new Set(['rider']);
const ALL: ReadonlySet<string> = new Set();

/** The placed bike as solids: its parts, or its frame colored by how much of its strength is used. */
export function SolidView() {
  const name = useScreen(({ answer }) => answer?.name ?? 'the build');
  const withRider = useScreen((state) => state.withRider);
  const isStrength = useScreen((state) => state.solidShows === 'strength');
  const canvas = useRef<HTMLCanvasElement>(null);
  const { view, trouble } = useBikeView(canvas);
  const solids = useDrawn('solids', (solver, revision) => solver.solids(revision));
  const strength = useStrength(solids);
  const shown = isStrength ? strength.drawn : solids;
  const parts = useMemo(() => [...new Set(shown?.map(({ part }) => part))], [shown]);
  const marked = useMarked(parts);

  useEffect(() => {
    if (view && shown) view.show(shown, withRider && !isStrength ? ALL : NO_RIDER);
  }, [view, shown, withRider, isStrength]);
  useEffect(() => view?.mark(marked), [view, marked]);

  return (
    <div className={isStrength ? 'view is-strength' : 'view'}>
      <div className="view-tools">
        <ShowsChoice />
        <Standpoints view={view} />
        {!isStrength && <RiderSwitch />}
      </div>
      {isStrength && <StrengthTools strength={strength} />}
      {trouble && <p className="trouble">{trouble}</p>}
      <SolidPane
        canvas={canvas}
        view={view}
        isReady={view !== undefined && shown !== undefined}
        label={
          isStrength
            ? `${name} in 3D: ${strength.picture?.uses.length ?? 0} frame parts colored by use of their limit, ${strength.caseName}. The lists below say the same.`
            : `${name} in 3D: ${parts.length} parts in place. The list of parts below says which.`
        }
      />
      {isStrength ? (
        <>
          <UseLegend strength={strength} />
          <StrengthLists strength={strength} />
        </>
      ) : (
        <PartList parts={parts} marked={marked} />
      )}
    </div>
  );
}

function ShowsChoice() {
  const { screen } = useWorkshop();
  const shows = useScreen((state) => state.solidShows);
  return (
    <RadioGroup
      aria-label="Show"
      orientation="horizontal"
      className="choice"
      value={shows}
      onChange={(value) => screen.setState({ solidShows: value === 'strength' ? 'strength' : 'parts' })}
    >
      <Radio value="parts">Parts</Radio>
      <Radio value="strength">Strength</Radio>
    </RadioGroup>
  );
}

const Standpoints = ({ view }: { readonly view: BikeView | undefined }) => (
  <div className="buttons">
    <Button onPress={() => view?.look('corner')}>Reset</Button>
    <Button onPress={() => view?.look('side')}>Side</Button>
    <Button onPress={() => view?.look('front')}>Front</Button>
    <Button onPress={() => view?.look('top')}>Top</Button>
  </div>
);
