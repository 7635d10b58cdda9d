import { Button } from 'react-aria-components';
import type { ScreenFinding } from '../worker/messages.ts';
import { Amount } from './Amount.tsx';
import { useScreen, useWorkshop } from './context.ts';
import { jumpToField, pathOfPart } from './jump.ts';
import { SEVERITY_WORDS, SeverityMark } from './SeverityMark.tsx';
import { SourceLine } from './SourceLine.tsx';

const QUESTIONS: Readonly<Record<ScreenFinding['question'], string>> = {
  together: 'Does it go together?',
  hold: 'Does it hold?',
  ride: 'Does it ride?',
  make: 'Can I make it?',
};

/** One finding: what, against which limit, why it matters, what to do, and the way to the field. */
export function FindingCard({ finding }: { readonly finding: ScreenFinding }) {
  const workshop = useWorkshop();
  const units = useScreen((state) => state.units);
  const { severity, what, why, remedy, value, limit, margin } = finding;
  const path = finding.path ?? pathOfPart(workshop, finding.part);
  return (
    <article className={`card card-${severity}`}>
      <h2>
        <SeverityMark severity={severity} />
        <span className="severity">{SEVERITY_WORDS[severity]}</span>
        <span className="question">{QUESTIONS[finding.question]}</span>
      </h2>
      <p className="what">{what}</p>
      {limit && (
        <dl className="measures">
          {value && <Measure name="Is" text={value[units]} />}
          <Measure name="Limit" text={limit[units]} />
          {margin && <Measure name="Margin" text={margin[units]} />}
        </dl>
      )}
      <p>
        <b>Why:</b> {why}
      </p>
      {remedy && (
        <p>
          <b>Do:</b> {remedy}
        </p>
      )}
      <div className="card-foot">
        <SourceLine source={finding.source} />
        {path !== undefined && (
          <Button className="button-main" onPress={() => jumpToField(workshop, path)}>
            Go to {path}
          </Button>
        )}
      </div>
    </article>
  );
}

function Measure({ name, text }: { readonly name: string; readonly text: string }) {
  return (
    <div>
      <dt>{name}</dt>
      <dd>
        <Amount text={text} />
      </dd>
    </div>
  );
}
