import { type KeyboardEvent, type PointerEvent, type RefObject, useRef } from 'react';
import { Button } from 'react-aria-components';
import type { BikeView } from '../three/bikeView.ts';
import { useWorkshop } from './context.ts';
import { jumpToField, pathOfPart } from './jump.ts';

const STEP = Math.PI / 18;
const TAP = 5;

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

interface SolidPaneProps {
  readonly canvas: RefObject<HTMLCanvasElement | null>;
  readonly view: BikeView | undefined;
  /** What is to be seen, in words. */
  readonly label: string;
  readonly isReady: boolean;
}

/** The picture in 3D, turned by keys and fingers; a tap on a part opens its field. */
export function SolidPane({ canvas, view, label, isReady }: SolidPaneProps) {
  const workshop = useWorkshop();
  const down = useRef<{ readonly x: number; readonly y: number }>(undefined);
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
          aria-label={label}
          data-ready={isReady ? 'true' : undefined}
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
  );
}
