import { homeFile } from '../schema';
import { integrity } from '../integrity';
import { fieldProblems } from './problems';
import { fillHome } from './fill';
import { migrate, VERSION } from './migrations';
import { idsTwice } from './idsTwice';
import { fileNames } from './names';
import { readJson } from './readJson';
import type { Home } from '../home';
import type { Problem } from '../problem';

export type Parsed = { ok: true; home: Home } | { ok: false; problems: readonly Problem[] };

/** More problems than a person will read at once are counted instead. */
const SHOWN = 20;

function bad(problems: readonly Problem[]): Parsed {
  if (problems.length <= SHOWN) return { ok: false, problems };
  return {
    ok: false,
    problems: [...problems.slice(0, SHOWN), { kind: 'more-problems', count: problems.length - SHOWN }],
  };
}

/**
 * Reads the text of a home file. Either the whole home is right, or nothing is taken and every problem is named. A
 * file of a newer version is called newer before any of its fields is looked at.
 */
export function parseHome(text: string): Parsed {
  const read = readJson(text);
  if (!read.ok) return bad([read.problem]);
  const json = read.value;
  if (typeof json !== 'object' || json === null || Array.isArray(json))
    return bad([{ kind: 'file-foreign', format: null }]);
  const { format, version } = json as Record<string, unknown>;
  if (format !== 'stillroom-home') return bad([{ kind: 'file-foreign', format: format ?? null }]);
  if (typeof version !== 'number' || !Number.isInteger(version) || version < 0)
    return bad([{ kind: 'file-version', version: version ?? null, known: VERSION }]);
  if (version > VERSION) return bad([{ kind: 'file-newer', version, known: VERSION }]);

  const present = migrate(json as Record<string, unknown>, version);
  const checked = homeFile.safeParse(present);
  if (!checked.success) return bad(fieldProblems(present, checked.error.issues, fileNames));
  const twice = idsTwice(checked.data);
  if (twice.length > 0) return bad(twice);
  const home = fillHome(checked.data);
  const problems = integrity(home);
  return problems.length > 0 ? bad(problems) : { ok: true, home };
}
