import { type KeyboardEvent, type PointerEvent, useEffect, useMemo, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import type { BikeView } from '../three/bikeView.ts';
import { useScreen, useWorkshop } from './context.ts';
import { jumpToField, pathOfPart } from './jump.ts';
import { PartList } from './PartList.tsx';
import { RiderSwitch } from './RiderSwitch.tsx';
import { useDrawn } from './useDrawn.ts';
import { useMarked } from './useMarked.ts';

const STEP = Math.PI / 18;
const TAP = 5;
const NO_RIDER: ReadonlySet<string> = new Set(['rider']);
const ALL: ReadonlySet<string> = new Set();

const KEYS: Readonly<Record<string, (view: BikeView) => void>> = {
  ArrowLeft: (view) => view.turn(-STEP, 0),
  ArrowRight: (view) => view.turn(STEP, 0),
  ArrowUp: (view) => view.turn(0, STEP),
  ArrowDown: (view) => view.turn(0, -STEP),
  '+': (view) => view.zoom(1.2),
  '=': (view) => view.zoom(1.2),
  '-': (view) => view.zoom(1 / 1.2),
  '0': (view) => view.look('corner'),
};

/** The placed bike as solids; the library that draws them is loaded when this is first opened. */
export function SolidView() {
  const workshop = useWorkshop();
  const name = useScreen(({ answer }) => answer?.name ?? 'the build');
  const withRider = useScreen((state) => state.withRider);
  const canvas = useRef<HTMLCanvasElement>(null);
  const down = useRef<{ readonly x: number; readonly y: number }>(undefined);
  const { view, trouble } = useBikeView(canvas);
  const solids = useDrawn('solids', (solver, revision) => solver.solids(revision));
  const parts = useMemo(() => [...new Set(solids?.map(({ part }) => part))], [solids]);
  const marked = useMarked(parts);

  useEffect(() => {
    if (view && solids) view.show(solids, withRider ? ALL : NO_RIDER);
  }, [view, solids, withRider]);
  useEffect(() => view?.mark(marked), [view, marked]);

  const onKeyDown = (event: KeyboardEvent): void => {
    const act = KEYS[event.key];
    if (!act || !view || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(view);
  };
  const onPointerUp = (event: PointerEvent<HTMLCanvasElement>): void => {
    const start = down.current;
    if (!view || !start || Math.hypot(event.clientX - start.x, event.clientY - start.y) > TAP) return;
    const { left, top, width, height } = event.currentTarget.getBoundingClientRect();
    const part = view.partAt(
      ((event.clientX - left) / width) * 2 - 1,
      1 - ((event.clientY - top) / height) * 2,
    );
    const path = part && pathOfPart(workshop, part);
    if (path) jumpToField(workshop, path);
  };

  return (
    <div className="view">
      <div className="view-tools">
        <div className="buttons">
          <Button onPress={() => view?.look('corner')}>Reset</Button>
          <Button onPress={() => view?.look('side')}>Side</Button>
          <Button onPress={() => view?.look('front')}>Front</Button>
          <Button onPress={() => view?.look('top')}>Top</Button>
        </div>
        <RiderSwitch />
      </div>
      {trouble && <p className="trouble">{trouble}</p>}
      <div className="pane">
        {/* biome-ignore lint/a11y/useSemanticElements: a group of one picture that takes keys, no set of form fields */}
        <div
          className="solid"
          role="group"
          aria-label="3D view. Arrow keys go round the bike, plus and minus go nearer and farther, 0 resets."
          // biome-ignore lint/a11y/noNoninteractiveTabindex: the view is turned by keys
          tabIndex={0}
          onKeyDown={onKeyDown}
        >
          <canvas
            ref={canvas}
            role="img"
            aria-label={`${name} in 3D: ${parts.length} parts in place. The list of parts below says which.`}
            data-ready={view && solids ? 'true' : undefined}
            onPointerDown={(event) => {
              down.current = { x: event.clientX, y: event.clientY };
            }}
            onPointerUp={onPointerUp}
          />
        </div>
        <div className="pane-tools">
          <Button aria-label="Nearer" onPress={() => view?.zoom(1.3)}>
            +
          </Button>
          <Button aria-label="Farther" onPress={() => view?.zoom(1 / 1.3)}>
            −
          </Button>
        </div>
      </div>
      <PartList parts={parts} marked={marked} />
    </div>
  );
}

function useBikeView(canvas: { readonly current: HTMLCanvasElement | null }) {
  const [view, setView] = useState<BikeView>();
  const [trouble, setTrouble] = useState<string>();
  useEffect(() => {
    let made: BikeView | undefined;
    let isGone = false;
    const start = async (): Promise<void> => {
      const { BikeView } = await import('../three/bikeView.ts');
      if (isGone || !canvas.current) return;
      made = new BikeView(canvas.current);
      setView(made);
    };
    start().catch((error: Error) =>
      setTrouble(`This browser can not draw the 3D view (${error.message}). The other views say the same.`),
    );
    return () => {
      isGone = true;
      made?.dispose();
    };
  }, [canvas]);
  return { view, trouble };
}
