import { issueNames } from '../../../calc/plan/issue-names.ts';
import { dayOf } from '../../../calc/sheets/days/day.ts';
import type { Project } from '../../../routing/site/site.ts';
import { setField } from '../../document/edits/set.ts';
import { useDocument, useDocumentStore } from '../../document/use-document.tsx';
import { FieldGroup } from '../../parts/field-group.tsx';
import { TextField } from '../../parts/fields.tsx';

const FIELDS = {
  number: 'project number',
  client: 'client',
  address: 'address',
  jurisdiction: 'authority having jurisdiction',
  phase: 'issued as',
  drawn: 'drawn by',
  checked: 'checked by',
} as const satisfies Partial<Record<keyof Project, string>>;

const ISSUE = { mark: '', date: '', text: '' };

/** What the title block of the drawing set says of the job. What is left empty stays empty there. */
export function ProjectForm() {
  const document = useDocumentStore();
  const project = useDocument((state) => state.file.project) ?? {};
  const put = (next: Project): void => {
    const { file, apply } = document.getState();
    const given = Object.fromEntries(Object.entries(next).filter(([, value]) => value !== undefined));
    apply(
      setField(file, 'Change the project', 'project', Object.keys(given).length > 0 ? (given as never) : undefined),
    );
  };
  const issues = project.issues ?? [];
  const putIssues = (next: NonNullable<Project['issues']>): void =>
    put({ ...project, issues: next.length > 0 ? next : undefined } as Project);
  return (
    <FieldGroup name="Project" heading="Project">
      {(Object.keys(FIELDS) as (keyof typeof FIELDS)[]).map((name) => (
        <TextField
          key={name}
          label={FIELDS[name]}
          long
          value={project[name] ?? ''}
          check={(text) => (text.length > 200 ? '200 letters or fewer' : null)}
          onChange={(text) => put({ ...project, [name]: text === '' ? undefined : text } as Project)}
        />
      ))}
      {issues.map((issue, i) => (
        <fieldset key={`${i} of ${issues.length}`} className="fields issue" aria-label={`Issue ${i + 1}`}>
          <h4>Issue {i + 1}</h4>
          {(Object.keys(ISSUE) as (keyof typeof ISSUE)[]).map((name) => (
            <TextField
              key={name}
              label={name === 'text' ? 'issued for' : name}
              value={issue[name]}
              check={(text) =>
                text === '' ? 'fill this in' : text.length > (name === 'mark' ? 12 : 200) ? 'too long' : null
              }
              onChange={(text) => putIssues(issues.map((one, at) => (at === i ? { ...one, [name]: text } : one)))}
            />
          ))}
          <button type="button" className="plain" onClick={() => putIssues(issues.filter((_, at) => at !== i))}>
            Take this issue away
          </button>
        </fieldset>
      ))}
      {issues.length < 40 && (
        <button
          type="button"
          className="plain"
          onClick={() =>
            putIssues([...issues, { mark: String(issues.length + 1), date: dayOf(new Date()), text: 'for review' }])
          }
        >
          Add an issue
        </button>
      )}
      <button
        type="button"
        className="plain"
        onClick={() => {
          const { file, site, plan, apply } = document.getState();
          const issued = issueNames(site, plan);
          apply(
            setField(file, 'Keep every number and name', 'issued', Object.keys(issued).length > 0 ? issued : undefined),
          );
        }}
      >
        Keep every number and name as issued
      </button>
    </FieldGroup>
  );
}
