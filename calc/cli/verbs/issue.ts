import { writeSite } from '../../../routing/site/file/write.ts';
import type { SiteFile } from '../../../routing/site/site.ts';
import { counted } from '../../../routing/words/counted.ts';
import { issueNames } from '../../plan/issue-names.ts';
import { plan } from '../../plan/plan.ts';
import type { Machine } from '../machine.ts';
import { done, type VerbOutcome, wrong } from '../outcome.ts';
import { readSites } from '../sites.ts';

export interface IssueOptions {
  readonly out?: string;
  /** Writes over what stands at `out` already. */
  readonly replace: boolean;
  /** Mark and words of the issue for the title block; nothing is added to its history without either. */
  readonly mark?: string;
  readonly text?: string;
}

/** Letters that a mark and a line of the history may have. */
const MOST_MARK = 12;
const MOST_TEXT = 200;

/**
 * `issue SITE --out FILE`: the site with every circuit, conduit and junction box kept at the number and name that its plan
 * has now, so that a later change renumbers none of them, and with a line in the history of issues.
 */
export function issueVerb(paths: readonly string[], options: IssueOptions, machine: Machine): VerbOutcome {
  const { out, replace, mark, text } = options;
  const [path, ...more] = paths;
  if (path === undefined || more.length > 0) return wrong('issue: name one site file');
  if (out === undefined) return wrong('issue: --out says where the issued site goes');
  if (mark !== undefined && (mark.trim() === '' || mark.length > MOST_MARK))
    return wrong(`issue --mark: 1 to ${MOST_MARK} letters`);
  if (text !== undefined && (text.trim() === '' || text.length > MOST_TEXT))
    return wrong(`issue --text: 1 to ${MOST_TEXT} letters`);
  if (!replace && machine.isTaken(out))
    return wrong(`issue --out: ${out} stands there already; --replace writes over it`);
  const read = readSites([path], machine);
  if (!read.ok) return wrong(read.reason);
  const [{ file, site }] = read.sites as [(typeof read.sites)[number]];
  const issued = issueNames(site, plan(site));
  const named = { ...file, ...(Object.keys(issued).length > 0 && { issued }) };
  const after = mark === undefined && text === undefined ? named : withIssue(named, mark, text, machine.today());
  try {
    machine.write(out, writeSite(after));
  } catch (error) {
    return wrong(`${out}: cannot be written: ${error instanceof Error ? error.message : String(error)}`);
  }
  const size = (names: object | undefined): number => new Set(Object.values(names ?? {})).size;
  const circuits = Object.keys(issued.circuits ?? {}).length;
  return done(
    `${out}: ${counted(circuits, 'circuit')}, ${counted(size(issued.conduits), 'conduit')} and ${counted(size(issued.boxes), 'junction box', 'junction boxes')} keep their numbers and names\n`,
  );
}

function withIssue(file: SiteFile, mark: string | undefined, text: string | undefined, date: string): SiteFile {
  const issues = file.project?.issues ?? [];
  const next = { mark: mark ?? String(issues.length + 1), date, text: text ?? 'Issued' };
  return { ...file, project: { ...file.project, issues: [...issues, next] } };
}
