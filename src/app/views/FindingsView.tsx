import { useState } from 'react';
import { ToggleButton, ToggleButtonGroup } from 'react-aria-components';
import type { ScreenFinding } from '../worker/messages.ts';
import { useScreen } from './context.ts';
import { FindingCard } from './FindingCard.tsx';
import { ScrollView } from './ScrollView.tsx';
import { SEVERITIES, SEVERITY_WORDS, SeverityMark } from './SeverityMark.tsx';

/** Everything that does not go together, what stops the work first. */
export function FindingsView() {
  const findings = useScreen(({ answer }) => answer?.findings ?? []);
  const [shown, setShown] = useState<ReadonlySet<string>>(new Set(SEVERITIES));
  const visible = findings.filter(({ severity }) => shown.has(severity));
  return (
    <ScrollView label="Findings">
      <ToggleButtonGroup
        className="choice"
        aria-label="Show"
        selectionMode="multiple"
        selectedKeys={shown}
        onSelectionChange={(keys) => setShown(new Set([...keys].map(String)))}
      >
        {SEVERITIES.map((severity) => (
          <ToggleButton key={severity} id={severity}>
            <SeverityMark severity={severity} />
            {countLabel(findings, severity)}
          </ToggleButton>
        ))}
      </ToggleButtonGroup>
      <ul className="cards">
        {visible.map((finding) => (
          <li key={finding.key}>
            <FindingCard finding={finding} />
          </li>
        ))}
      </ul>
      {visible.length === 0 && (
        <p className="hint">
          Nothing of the kinds shown was found against the limits that are checked. What is not checked can
          still be wrong.
        </p>
      )}
    </ScrollView>
  );
}

const countLabel = (findings: readonly ScreenFinding[], severity: ScreenFinding['severity']): string =>
  `${SEVERITY_WORDS[severity]} ${findings.filter((one) => one.severity === severity).length}`;
