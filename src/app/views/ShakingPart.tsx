import type { Printed, ScreenShaking } from '../worker/messages.ts';
import { useScreen } from './context.ts';
import { useShaking } from './useShaking.ts';

/** Natural frequencies of the frame with the engine speeds that drive them, and buckling of the frame as a whole. */
export function ShakingPart() {
  const shaking = useShaking();
  return (
    <div className="shaking" aria-live="polite" aria-busy={shaking === undefined}>
      <h2>What shakes it</h2>
      {shaking === undefined ? <p className="hint is-kept">working…</p> : <Shaking shaking={shaking} />}
    </div>
  );
}

function Shaking({ shaking: { frequencies, engine, buckling, flaws } }: { readonly shaking: ScreenShaking }) {
  return (
    <>
      {flaws.length > 0 && <p className="trouble">Not worked out: {flaws.join('; ')}.</p>}
      {engine ? <EngineText engine={engine} /> : <p>The build tells no engine speed to compare with.</p>}
      {frequencies.length > 0 && <FrequencyTable frequencies={frequencies} />}
      <p>
        At a speed in the table expect buzz in what moves most, loose fasteners and, over time, cracks. How
        much is felt depends on damping and on how hard the engine shakes, which are not known. Tires and
        mounts count as stiff.
      </p>
      {buckling && (
        <p>
          The whole frame buckles at {buckling.factor} times the loads of “{buckling.case}”, most at:{' '}
          {buckling.what}; by the linear theory, in which tubes neither yield nor are crooked.
        </p>
      )}
    </>
  );
}

function EngineText({ engine }: Required<Pick<ScreenShaking, 'engine'>>) {
  const units = useScreen((state) => state.units);
  const idle = `${engine.idle[units]}${engine.isIdleGiven ? '' : ' (0.4 of the governed speed, common practice)'}`;
  return (
    <p>
      {engine.fires
        ? `A four-stroke single fires once in two turns and shakes once a turn: idle ${idle}`
        : 'A motor shakes once a turn: from rest'}{' '}
      to {engine.governed[units]} is {engine.range}.
    </p>
  );
}

const FrequencyTable = ({ frequencies }: Pick<ScreenShaking, 'frequencies'>) => (
  <table className="shaking-table">
    <caption>Natural frequencies of the frame, the lowest {frequencies.length}</caption>
    <thead>
      <tr>
        <th scope="col">Frequency</th>
        <th scope="col">What moves most</th>
        <th scope="col">Fires at it at</th>
        <th scope="col">Turns at it at</th>
      </tr>
    </thead>
    <tbody>
      {frequencies.map(({ hertz, what, firing, turning }) => (
        <tr key={`${hertz} ${what}`}>
          <th scope="row">{hertz}</th>
          <td>{what}</td>
          <Speed speed={firing} />
          <Speed speed={turning} />
        </tr>
      ))}
    </tbody>
  </table>
);

function Speed({ speed }: { readonly speed: Printed | undefined }) {
  const units = useScreen((state) => state.units);
  return <td>{speed === undefined ? '–' : <b>{speed[units]}</b>}</td>;
}
