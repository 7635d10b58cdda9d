import { Button } from 'react-aria-components';
import { useScreen, useWorkshop } from './context.ts';
import { jumpToField } from './jump.ts';
import { SEVERITIES, SEVERITY_WORDS, SeverityMark } from './SeverityMark.tsx';

/** How the bike stands: errors of the file, else counts of the findings and what the last edit moved. */
export function VerdictBar() {
  const workshop = useWorkshop();
  const { screen } = workshop;
  const issues = useScreen((state) => state.issues);
  const answer = useScreen((state) => state.answer);
  const isBusy = useScreen((state) => state.isBusy);
  const trouble = useScreen((state) => state.trouble);
  const [first] = issues;
  return (
    <div className="verdict" aria-busy={isBusy}>
      {trouble !== undefined && (
        <div className="verdict-trouble" role="alert">
          <span>{trouble}</span>
          <Button onPress={() => screen.setState({ trouble: undefined as never })}>Close</Button>
        </div>
      )}
      {first ? (
        <Button className="verdict-errors" onPress={() => jumpToField(workshop, first.path)}>
          <SeverityMark severity="stop" />
          <span>
            {counted(issues.length, 'error')} in the file
            {answer ? '; the last good result stays. ' : '. '}
            <b>{first.path || 'The file'}</b>: {first.text}
          </span>
        </Button>
      ) : (
        answer && (
          <>
            <Button className="verdict-counts" onPress={() => screen.setState({ view: 'findings' })}>
              {SEVERITIES.map((severity) => (
                <span key={severity} className="verdict-count">
                  <SeverityMark severity={severity} />
                  {counted(
                    answer.findings.filter((one) => one.severity === severity).length,
                    SEVERITY_WORDS[severity].toLowerCase(),
                  )}
                </span>
              ))}
            </Button>
            <LastEdit />
          </>
        )
      )}
      <span className="sr-only" role="status">
        {statusText(issues.length, isBusy, answer !== undefined)}
      </span>
    </div>
  );
}

/** The first figures that the last edit moved, in one line. */
function LastEdit() {
  const { screen } = useWorkshop();
  const figures = useScreen(({ answer }) => answer?.sinceEdit.figures ?? []);
  const units = useScreen((state) => state.units);
  const [first] = figures;
  if (!first) return null;
  return (
    <Button className="verdict-changes" onPress={() => screen.setState({ view: 'changes' })}>
      <b>{figures.length} moved</b>
      <span className="verdict-first">
        {first.name} {first.before?.[units] ?? ''} → {first.after?.[units] ?? 'gone'}
      </span>
    </Button>
  );
}

const counted = (count: number, word: string): string => `${count} ${word}${count === 1 ? '' : 's'}`;

function statusText(errors: number, isBusy: boolean, hasAnswer: boolean): string {
  if (isBusy) return 'Solving';
  if (errors > 0) return `${errors} errors in the file`;
  return hasAnswer ? 'Solved' : '';
}
