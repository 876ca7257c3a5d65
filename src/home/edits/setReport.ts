import { putPart } from './check';
import type { ReportWords } from '../home';
import type { Edit } from './edit';

/** Changes some of the words that the report carries. */
export function setReport(patch: Partial<ReportWords>): Edit {
  return { name: 'Change report', apply: (draft) => putPart(draft, 'report', patch) ?? undefined };
}
