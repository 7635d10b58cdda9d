import { type KeyboardEvent, useEffect, useRef } from 'react';
import { Button } from 'react-aria-components';
import { PanZoom } from './panZoom.ts';
import { useNarrow } from './useNarrow.ts';

interface DrawingPaneProps {
  /** An SVG made by the core, its texts escaped there. */
  readonly svg: string | undefined;
  readonly label: string;
  /** Changes when another drawing is shown, not when the same one is drawn anew. */
  readonly subject: string;
  /** A page with edges, not a picture on the page. */
  readonly isPaper?: boolean;
  readonly marked?: ReadonlySet<string>;
  readonly onPart?: (part: string) => void;
}

const KEYS: Readonly<Record<string, (view: PanZoom) => void>> = {
  ArrowLeft: (view) => view.pan(-0.1, 0),
  ArrowRight: (view) => view.pan(0.1, 0),
  ArrowUp: (view) => view.pan(0, -0.1),
  ArrowDown: (view) => view.pan(0, 0.1),
  '+': (view) => view.zoom(1.25),
  '=': (view) => view.zoom(1.25),
  '-': (view) => view.zoom(0.8),
  '0': (view) => view.fit(),
};

/** A drawing that can be moved and enlarged by pointer, fingers, wheel and keys; lines stay sharp. */
export function DrawingPane({ svg, label, subject, isPaper = false, marked, onPart }: DrawingPaneProps) {
  const isNarrow = useNarrow();
  const box = useRef<HTMLDivElement>(null);
  const view = useRef<PanZoom>(undefined);
  const tellPart = useRef(onPart);
  tellPart.current = onPart;

  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const made = new PanZoom(element, (part) => tellPart.current?.(part));
    view.current = made;
    return () => made.dispose();
  }, []);

  useEffect(() => {
    if (svg === undefined || !view.current) return;
    const isOther = view.current.show(svg, subject, label);
    if (isOther && isPaper && isNarrow) view.current.fitWidth();
  }, [svg, subject, label, isPaper, isNarrow]);

  // After the drawing itself, so that a new one is marked too.
  // biome-ignore lint/correctness/useExhaustiveDependencies: a new drawing has to be marked again
  useEffect(() => view.current?.mark(marked ?? new Set()), [marked, svg]);

  const onKeyDown = (event: KeyboardEvent): void => {
    const act = KEYS[event.key];
    if (!act || !view.current || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    act(view.current);
  };

  return (
    <div className="pane">
      {/* biome-ignore lint/a11y/useSemanticElements: a group of one drawing that takes keys, no set of form fields */}
      <div
        ref={box}
        className={isPaper ? 'drawing is-paper' : 'drawing'}
        role="group"
        aria-label={`${label}. Arrow keys move it, plus and minus enlarge and reduce, 0 shows all.`}
        // biome-ignore lint/a11y/noNoninteractiveTabindex: the drawing is moved by keys
        tabIndex={0}
        onKeyDown={onKeyDown}
      />
      <div className="pane-tools">
        <Button aria-label="Enlarge" onPress={() => view.current?.zoom(1.4)}>
          +
        </Button>
        <Button aria-label="Reduce" onPress={() => view.current?.zoom(1 / 1.4)}>
          −
        </Button>
        <Button onPress={() => view.current?.fit()}>All</Button>
      </div>
    </div>
  );
}
