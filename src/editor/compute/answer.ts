import { arrange, type Progress } from '../../engine/arranging/arrange';
import { assessWhatIf } from '../../engine/whatIf/assessWhatIf';
import { compareArrangements } from '../../engine/whatIf/compareArrangements';
import { assessHome } from '../../engine/assessHome';
import { drawLevel } from '../../engine/drawLevel';
import { fieldsOf } from '../../engine/dose/fieldAt';
import { goodArea } from '../../engine/arranging/goodArea';
import { groundsOf } from '../../engine/arranging/plan';
import { nextReadings } from '../../engine/nextReadings/nextReadings';
import { pricesOf } from '../../engine/arranging/prices';
import { pieceDose } from '../../engine/dose/pieceDose';
import { sampleSurvey } from '../../engine/mapping/sourceSampling/sampleSurvey';
import { withSurvey } from '../../engine/mapping/fitSurvey';
import { createJudge } from './judge';
import type { Ask, Reply } from './protocol';

const judge = createJudge();

/** Works out the answer to one question and sends progress and the answer. Never throws: a fault becomes a problem. */
export function answer(ask: Ask, send: (reply: Reply) => void): void {
  const { key } = ask;
  const progress: Progress = (share, least) => send({ reply: 'progress', key, share, least });
  try {
    send(worked(ask, progress));
  } catch (reason) {
    const detail = reason instanceof Error ? reason.message : String(reason);
    send({ reply: 'problem', key, problem: { kind: 'work-failed', detail } });
  }
}

function worked(ask: Ask, progress: Progress): Reply {
  const { key } = ask;
  switch (ask.ask) {
    case 'assess': {
      const reply = assessHome(ask.request, progress, ask.sampled);
      if (!reply.ok) return { reply: 'problem', key, problem: reply.problem };
      return { reply: 'done', key, answer: reply.assessment };
    }
    case 'sample':
      return { reply: 'done', key, answer: sampleSurvey(ask.survey, progress, ask.start) };
    case 'picture': {
      // The method stays as it was chosen: a map that changes its mind under the hand could not be read.
      const fieldAt = fieldsOf(withSurvey(ask.fitted, ask.survey));
      return { reply: 'done', key, answer: drawLevel(fieldAt, ask.level, { variance: false }) };
    }
    case 'doses': {
      const fieldAt = fieldsOf(ask.fitted);
      return { reply: 'done', key, answer: ask.pieces.flatMap((piece) => pieceDose(fieldAt, piece) ?? []) };
    }
    case 'arrange':
      return { reply: 'done', key, answer: arrange(ask.request, progress) };
    case 'prices':
      return { reply: 'done', key, answer: pricesOf(ask.request, progress) };
    case 'judge':
      return { reply: 'done', key, answer: judge(ask.request, ask.puts) };
    case 'whatIf': {
      const reply = assessWhatIf(ask.request, progress);
      if (!reply.ok) return { reply: 'problem', key, problem: reply.problem };
      return { reply: 'done', key, answer: reply.supposed };
    }
    case 'compare':
      return { reply: 'done', key, answer: compareArrangements(ask.request) };
    case 'good': {
      const { request, id, angle } = ask;
      const piece = request.pieces.find((one) => one.id === id)!;
      const put = { id, level: piece.level, at: piece.at, angle };
      return {
        reply: 'done',
        key,
        answer: goodArea(request, groundsOf(request, fieldsOf(request.fitted)), put),
      };
    }
    case 'next':
      return { reply: 'done', key, answer: nextReadings(ask.request, progress) };
  }
}
