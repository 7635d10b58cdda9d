import { useScreen } from './context.ts';
import { useNarrow } from './useNarrow.ts';

/** Stands under everything that looks like a verdict. */
export function Caution() {
  const notChecked = useScreen(({ answer }) => answer?.notChecked);
  const isNarrow = useNarrow();
  const [first, ...rest] = notChecked ?? [];
  if (first === undefined) return null;
  const head = (
    <>
      <b>Checked only against the limits shown. Not checked:</b> {first}
    </>
  );
  if (!isNarrow)
    return (
      <p className="caution">
        {head}
        {rest.map((what) => `; ${what}`).join('')}. An empty list of findings is no permission to ride.
      </p>
    );
  return (
    <details className="caution">
      <summary>
        <span>
          {head}; and {rest.length} more
        </span>
      </summary>
      <ul>
        {rest.map((what) => (
          <li key={what}>{what}</li>
        ))}
      </ul>
      <p>An empty list of findings is no permission to ride.</p>
    </details>
  );
}
