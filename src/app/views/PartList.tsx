import { Button } from 'react-aria-components';
import { useWorkshop } from './context.ts';
import { jumpToField, pathOfPart } from './jump.ts';

interface PartListProps {
  readonly parts: readonly string[];
  readonly marked: ReadonlySet<string>;
}

/** The parts of a picture as words: what the eye sees there, and the same way to their fields. */
export function PartList({ parts, marked }: PartListProps) {
  const workshop = useWorkshop();
  return (
    <details className="part-list">
      <summary>Parts in this view ({parts.length})</summary>
      <ul>
        {parts.map((part) => {
          const path = pathOfPart(workshop, part);
          return (
            <li key={part}>
              {path === undefined ? (
                <span>{part}</span>
              ) : (
                <Button
                  className={marked.has(part) ? 'chip is-on' : 'chip'}
                  onPress={() => jumpToField(workshop, path)}
                >
                  {part}
                </Button>
              )}
            </li>
          );
        })}
      </ul>
    </details>
  );
}
