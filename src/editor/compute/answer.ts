import { arrange } from '../../engine/arranging/arrange';
import { assessHome } from '../../engine/assessHome';
import { drawLevel } from '../../engine/drawLevel';
import { fieldsOf } from '../../engine/dose/fieldAt';
import { fitSurvey } from '../../engine/mapping/fitSurvey';
import type { Ask, Reply } from './protocol';

/** Works out the answer to one question and sends progress and the answer. Never throws: a fault becomes a problem. */
export function answer(ask: Ask, send: (reply: Reply) => void): void {
  const { key } = ask;
  const progress = (share: number) => send({ reply: 'progress', key, share });
  try {
    send(worked(ask, progress));
  } catch (reason) {
    const detail = reason instanceof Error ? reason.message : String(reason);
    send({ reply: 'problem', key, problem: { kind: 'work-failed', detail } });
  }
}

function worked(ask: Ask, progress: (share: number) => void): Reply {
  const { key } = ask;
  switch (ask.ask) {
    case 'assess': {
      const reply = assessHome(ask.request, progress);
      if (!reply.ok) return { reply: 'problem', key, problem: reply.problem };
      return { reply: 'done', key, answer: reply.assessment };
    }
    case 'picture': {
      const fit = fitSurvey(ask.request.survey);
      if (!fit.ok) return { reply: 'problem', key, problem: fit.problem };
      const level = ask.request.levels.find(({ id }) => id === ask.level);
      if (!level)
        return { reply: 'problem', key, problem: { kind: 'work-failed', detail: `no level ${ask.level}` } };
      return { reply: 'done', key, answer: drawLevel(fieldsOf(fit.fitted), level, { variance: false }) };
    }
    case 'arrange':
      return { reply: 'done', key, answer: arrange(ask.request, progress) };
  }
}
