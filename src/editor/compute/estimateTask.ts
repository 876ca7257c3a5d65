import type { AssessRequest, Assessment } from '../../engine/assess';
import type { FittedSurvey } from '../../engine/mapping/fitSurvey';
import type { Sampled } from '../../engine/mapping/sourceSampling/sampleSurvey';
import type { Home, Piece } from '../../home/home';
import { assessPiece } from '../../home/questions/assessPiece';
import { assessQuestion } from '../../home/questions/assessQuestion';
import type { Results, View } from '../editor';
import { sameValue } from '../../engine/sameValue';
import type { Services } from '../services';
import { createEngineClient } from './engineClient';
import { createSamplingTask } from './samplingTask';

export interface EstimateTask {
  readonly results: Results;
  /** The home stands, or another round is looked at: work out everything, unless nothing asked about has changed. */
  settle(home: Home, view: View): void;
  /** The home moves under a gesture: a picture of this level, or the doses of what is carried, as they would be. */
  follow(home: Home, view: View): void;
  cancel(): void;
  /** The map stays as it is; its sources are not sampled. */
  stopSampling(): void;
  /** They are after all. */
  startSampling(): void;
  /** Another home: nothing known of the last one may show. */
  restart(): void;
  end(): void;
}

/** A hand lets go and grips again within this; asking in between would be work for nothing. */
const PAUSE = 120;
/** One frame of a screen. */
const FRAME = 16;

/** A whole answer over more readings than this takes longer than a fresh worker takes to start. */
const MANY = 300;

const EMPTY: Results = {
  state: 'idle',
  progress: 0,
  sampling: null,
  assessment: null,
  request: null,
  stale: false,
  problem: null,
  live: {},
};

/** What the map depends on: nothing else that moves is worth a picture a frame. */
const moved = (a: Home, b: Home) =>
  a.readings !== b.readings || a.sources !== b.sources || a.rooms !== b.rooms;

/** Pieces that stand elsewhere than in the home that was answered, and are used. */
const movedPieces = (home: Home, base: Home): Piece[] =>
  Object.values(home.pieces).filter((piece) => piece !== base.pieces[piece.id] && piece.uses.length > 0);

/** Of the wait for a sampled map, the sampling takes this share; the rest is drawing it. */
const SAMPLING = 0.8;

/** Keeps the map in step with the home: at once by the methods that are quick, and anew when its sources are sampled. */
export function createEstimateTask(
  {
    engineFactory,
    samplingFactory,
    schedule,
  }: Pick<Services, 'engineFactory' | 'samplingFactory' | 'schedule'>,
  changed: () => void,
  /** The survey that the doses of what is carried are asked of: that of the map, or as it would be. */
  shown: (fitted: FittedSurvey) => FittedSurvey = (fitted) => fitted,
): EstimateTask {
  const client = createEngineClient(engineFactory);
  const sampling = createSamplingTask({ samplingFactory });
  let results = EMPTY;
  /** The last whole answer and the home it is of; pictures of a gesture are laid over it. */
  let whole: Assessment | null = null;
  let wholeHome: Home | null = null;
  /** What the last whole answer was drawn with. */
  let drawnWith: Sampled | null = null;
  let asked: AssessRequest | null = null;
  /** The report's numbers are those that anybody's machine finds: its map does not go on from an earlier one. */
  let afresh = false;
  let callOff: (() => void) | null = null;
  let drawing = false;
  /** The home as it was last followed under a gesture. */
  let followed: Home | null = null;
  let next: { home: Home; view: View } | null = null;

  const set = (change: Partial<Results>) => {
    results = { ...results, ...change };
    changed();
  };

  const wanted = ({ survey }: AssessRequest) => ({ survey, afresh });

  const idle = () => ({ state: 'idle' as const, progress: 0 });

  /** Nobody waits any longer for the whole answer under way. */
  const dropAsked = () => {
    // A worker answers one question after the other: a long one would hold up the next for seconds.
    if (asked && asked.survey.readings.length > MANY) client.cancel();
    asked = null;
  };

  const ask = (home: Home, view: View) => {
    const request = assessQuestion(home, { round: view.round });
    afresh = view.stage === 'report';
    if (asked && sameValue(asked, request)) return;
    if (!asked && sameValue(results.request, request)) {
      wholeHome = home;
      set({ ...idle(), assessment: whole, stale: false, live: {} });
      refine();
      return;
    }
    dropAsked();
    if (!sampling.working(wanted(request))) stopSampling(false);
    asked = request;
    set({ state: 'running', progress: 0, stale: whole !== null });
    // A sampled map of nearly this survey leads to the next in moments: no other method shows in between.
    const goesOn = drawnWith !== null && whole !== null && sampling.goesOn(wanted(request));
    if (!goesOn) return assess(home, request, 0);
    sampling.start(wanted(request), {
      progress: (share) => set({ progress: SAMPLING * share }),
      done: () => (asked === request ? assess(home, request, SAMPLING) : undefined),
      failed: () => (asked === request ? assess(home, request, SAMPLING) : undefined),
    });
  };

  /** Asks for the whole answer to what was asked, with the samples there are; this share of the work is done. */
  const assess = (home: Home, request: AssessRequest, before: number) => {
    const sampled = sampling.of(wanted(request));
    client.put(
      'assess',
      { request, sampled },
      {
        progress: (share) => set({ progress: before + (1 - before) * share }),
        done(assessment) {
          asked = null;
          answered(home, request, assessment, sampled);
        },
        problem(problem) {
          asked = null;
          // Work that failed says nothing of the home: the old picture stays. Too few readings do: there is no map.
          if (problem.kind === 'work-failed') return set({ ...idle(), problem, stale: whole !== null });
          whole = null;
          wholeHome = null;
          set({ ...idle(), assessment: null, request, stale: false, problem, live: {} });
        },
      },
    );
  };

  /** A whole answer is there: it is shown, and if its sources are still to be sampled, that begins. */
  const answered = (home: Home, request: AssessRequest, assessment: Assessment, sampled: Sampled | null) => {
    whole = assessment;
    wholeHome = home;
    drawnWith = sampled;
    // Whoever waits for the last word on a map waits on.
    const known = sampling.of(wanted(request));
    const better = sampling.lacks(wanted(request)) || (known !== null && known !== sampled);
    const share = better ? (results.sampling ?? 0) : null;
    set({ ...idle(), assessment, request, stale: false, problem: null, live: {}, sampling: share });
    refine();
  };

  /** Nothing is being worked out: samples that are known are drawn with, and those that are lacking are asked for. */
  const refine = () => {
    const { request } = results;
    if (!request || !whole) return;
    const sampled = sampling.of(wanted(request));
    if (sampled && sampled !== drawnWith) return redraw(wholeHome!, request, sampled);
    if (!sampling.lacks(wanted(request))) return;
    if (results.sampling === null) set({ sampling: 0 });
    sampling.start(wanted(request), {
      progress: (share) => set({ sampling: SAMPLING * share }),
      failed: () => set({ sampling: null }),
      // Whatever is under way comes back here by itself.
      done: () => (asked || drawing || next ? undefined : refine()),
    });
  };

  const redraw = (home: Home, request: AssessRequest, sampled: Sampled) =>
    client.put(
      'assess',
      { request, sampled },
      {
        progress: (share) => set({ sampling: SAMPLING + (1 - SAMPLING) * share }),
        done: (assessment) => answered(home, request, assessment, sampled),
        problem: () => set({ sampling: null }),
      },
    );

  const stopSampling = (declined: boolean) => {
    sampling.stop(declined);
    if (results.sampling !== null) set({ sampling: null });
  };

  /** What the next frame needs: a picture where the map moves, else the doses of the pieces that do. */
  const draw = () => {
    if (drawing || !next || !whole || !wholeHome) return;
    const { home, view } = next;
    next = null;
    const onto = whole;
    const drawn = () => {
      drawing = false;
      if (next) callOff = schedule(draw, FRAME);
    };
    if (asked) {
      // The frame takes the place of the whole answer under way; `settle` asks for that again.
      dropAsked();
      set(idle());
    }
    drawing = true;
    if (!moved(home, wholeHome)) {
      const pieces = movedPieces(home, wholeHome).map(assessPiece);
      client.put(
        'doses',
        { fitted: shown(onto.fitted), pieces },
        {
          done(doses) {
            set({ live: Object.fromEntries(doses.map((dose) => [dose.id, dose])) });
            drawn();
          },
          problem: drawn,
        },
      );
      return;
    }
    const { survey, levels } = assessQuestion(home, { round: view.round, levels: [view.level] });
    const level = levels[0];
    if (!level) return drawn();
    client.put(
      'picture',
      { fitted: onto.fitted, survey, level },
      {
        done(picture) {
          const pictures = onto.pictures.map((old) => (old.level === picture.level ? picture : old));
          set({ assessment: { ...onto, pictures }, stale: true });
          drawn();
        },
        problem: drawn,
      },
    );
  };

  const onlyPiecesMove = (home: Home) =>
    wholeHome !== null && !moved(home, wholeHome) && movedPieces(home, wholeHome).length > 0;

  const stop = () => {
    callOff?.();
    callOff = null;
    next = null;
    if (drawing) client.forget();
    drawing = false;
  };

  return {
    get results() {
      return results;
    },
    settle(home, view) {
      stop();
      // What a key has moved is judged at once; what a hand carries has been, on its way.
      if (home !== followed && onlyPiecesMove(home)) {
        next = { home, view };
        draw();
      }
      callOff = schedule(() => {
        stop();
        ask(home, view);
      }, PAUSE);
    },
    follow(home, view) {
      followed = home;
      if (!whole || !wholeHome) return;
      if (!moved(home, wholeHome) && movedPieces(home, wholeHome).length === 0) {
        if (results.assessment === whole && !next && !drawing) return;
        stop();
        return set({ assessment: whole, live: {} });
      }
      next = { home, view };
      if (drawing) return;
      callOff?.();
      callOff = schedule(draw, FRAME);
    },
    cancel() {
      stop();
      client.cancel();
      asked = null;
      stopSampling(true);
      set({ ...idle(), assessment: whole, stale: whole !== null, live: {} });
    },
    stopSampling() {
      const { request } = results;
      // The samples are there, and the map is being drawn with them.
      if (request && !asked && sampling.of(wanted(request))) {
        sampling.decline(wanted(request));
        if (!drawing) client.forget();
      }
      stopSampling(true);
    },
    startSampling() {
      sampling.reconsider();
      refine();
    },
    restart() {
      stop();
      stopSampling(false);
      sampling.forget();
      client.forget();
      dropAsked();
      whole = null;
      wholeHome = null;
      results = EMPTY;
      changed();
    },
    end() {
      stop();
      sampling.stop(false);
      client.cancel();
    },
  };
}
