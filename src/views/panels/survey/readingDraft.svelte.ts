import { COMMON_METER, leastShown } from '../../../engine/survey/meter';
import { resultant } from '../../../engine/survey/resultant';
import type { FieldUnit, Home, Id, Meter, Point, Reading } from '../../../home/home';
import { firstOf } from '../../../home/order';
import { unitName } from '../../../words/numbers';
import { parseField, quantitySentence } from '../../../words/quantities';
import { survey } from '../../../words/survey';

/** The entries of a reading that take figures. */
export type Entry = 'value' | 'low' | 'high' | 'x' | 'y' | 'z';
/** What is asked for beside the value. */
export type Extra = 'range' | 'axes' | 'note';

const SIGNS = { below: '< ', above: '> ' } as const;

type Parsed = { ok: true; µT: number } | { ok: false; sentence: string };

/** The reading that is being typed; nothing of it is in the home until it is kept. */
export class ReadingDraft {
  entries: Record<Entry, string> = $state({ value: '', low: '', high: '', x: '', y: '', z: '' });
  active: Entry = $state('value');
  extra: Extra | null = $state(null);
  note = $state('');
  limit: 'below' | 'above' | null = $state(null);
  peak = $state(false);
  /** Metres; null: the height of the map. */
  height: number | null = $state(null);
  meter: Id | null = $state(null);
  /** What is wrong with what is typed for place and height, by field. */
  #troubles: Partial<Record<'across' | 'up' | 'height', string>> = $state({});

  readonly #home: () => Home;
  /** The unit chosen on the pad, as long as what it was chosen instead of is what the meter shows. */
  #chosen: { unit: FieldUnit; instead: FieldUnit } | null = $state(null);

  constructor(home: () => Home) {
    this.#home = home;
  }

  get meterInHand(): Meter | null {
    const { meters } = this.#home();
    return (this.meter ? meters[this.meter] : firstOf(meters)) ?? null;
  }

  /** What is typed is in the unit the meter shows; without one, in the unit chosen for the page. */
  get #ownUnit(): FieldUnit {
    return this.meterInHand?.unit ?? this.#home().settings.fieldUnit;
  }
  get unit(): FieldUnit {
    return this.#chosen?.instead === this.#ownUnit ? this.#chosen.unit : this.#ownUnit;
  }
  set unit(unit: FieldUnit) {
    this.#chosen = { unit, instead: this.#ownUnit };
  }

  /** All that is typed, to tell whether it has changed since. */
  get typed(): string {
    return JSON.stringify([this.entries, this.limit, this.extra, this.unit, this.#troubles]);
  }

  /** A field beside the value holds what cannot be read; an empty sentence: it no longer does. */
  trouble(field: 'across' | 'up' | 'height', sentence: string): void {
    this.#troubles[field] = sentence;
  }

  /** A key of the pad. */
  press(key: string): void {
    const text = this.entries[this.active];
    if (key === 'back') this.entries[this.active] = text.slice(0, -1);
    else if (key !== '.' || !/[.,]/.test(text))
      this.entries[this.active] = (text === '' && key === '.' ? '0' : text) + key;
  }

  /** The display shows that the field is beyond an end of its range; figures typed with it are that end. */
  beyond(side: 'below' | 'above'): void {
    this.limit = this.limit === side ? null : side;
  }

  ask(extra: Extra): void {
    this.extra = this.extra === extra ? null : extra;
    if (this.extra === 'range') this.active = this.entries.value === '' ? 'value' : 'low';
    else if (this.extra === 'axes') this.active = 'x';
    else this.active = 'value';
  }

  #parse(entry: Entry): Parsed {
    const parsed = parseField(this.entries[entry], this.unit);
    return parsed.ok
      ? { ok: true, µT: parsed.µT }
      : { ok: false, sentence: quantitySentence(parsed.problem) };
  }

  /** The field typed so far, µT; null while it is none. */
  get field(): number | null {
    const value = this.#value();
    return value.ok ? value.µT : null;
  }

  #value(): Parsed {
    if (this.extra !== 'axes') return this.#parse('value');
    const axes = (['x', 'y', 'z'] as const).map((axis) => this.#parse(axis));
    if (axes.some((axis) => !axis.ok)) return { ok: false, sentence: survey.axesIncomplete };
    const [x, y, z] = axes.map((axis) => (axis.ok ? axis.µT : 0)) as [number, number, number];
    // A root runs on for ever: it is given three figures, which is as fine as its axes are read.
    return { ok: true, µT: Number(resultant([x, y, z]).toPrecision(3)) };
  }

  /** The reading as an edit takes it, or the sentence that says what is missing. */
  finish(
    place: Point | null,
    where: { level: Id; round: Id; time: string },
  ): { ok: true; fields: Omit<Reading, 'id'> } | { ok: false; sentence: string } {
    const home = this.#home();
    const meter = this.meterInHand;
    const wrong = Object.values(this.#troubles).find(Boolean);
    if (wrong) return { ok: false, sentence: wrong };
    if (!place) return { ok: false, sentence: survey.noPlace };
    const typedLimit = this.extra === 'axes' ? null : parseField(this.entries.value, this.unit);
    let value = this.#value();
    const isZero = value.ok && value.µT === 0;
    const limit = isZero ? 'below' : (this.limit ?? (typedLimit?.ok ? typedLimit.limit : null));
    const shows = meter ?? COMMON_METER;
    const isEmpty = this.extra !== 'axes' && this.entries.value.trim() === '';
    if (isZero || (isEmpty && limit === 'below')) value = { ok: true, µT: leastShown(shows) };
    else if (isEmpty && limit === 'above') value = { ok: true, µT: shows.range[1] };
    else if (isEmpty && (this.entries.low !== '' || this.entries.high !== ''))
      return { ok: false, sentence: survey.valueToo };
    if (!value.ok) return value;
    const sign =
      this.limit === null || typedLimit?.ok === false || typedLimit?.limit ? '' : SIGNS[this.limit];
    const ends: (number | null)[] = [];
    for (const end of ['low', 'high'] as const) {
      if (this.entries[end] === '') ends.push(null);
      else {
        const parsed = this.#parse(end);
        if (!parsed.ok) return parsed;
        ends.push(parsed.µT);
      }
    }
    const axes = (['x', 'y', 'z'] as const).map((axis) => this.#parse(axis));
    return {
      ok: true,
      fields: {
        level: where.level,
        at: place,
        value: value.µT,
        height: this.height ?? home.settings.mapHeight,
        min: ends[0]!,
        max: ends[1]!,
        axes:
          this.extra === 'axes'
            ? (axes.map((axis) => (axis.ok ? axis.µT : 0)) as [number, number, number])
            : null,
        taken: this.peak ? 'peak' : 'settled',
        limit,
        meter: meter?.id ?? null,
        round: where.round,
        walk: null,
        time: where.time,
        text: this.extra === 'axes' || isEmpty ? '' : `${sign}${this.entries.value} ${unitName(this.unit)}`,
        note: this.note,
        excluded: '',
      },
    };
  }

  /** Ready for the next one; unit, height and meter stay. */
  clear(): void {
    this.entries = { value: '', low: '', high: '', x: '', y: '', z: '' };
    this.active = this.extra === 'axes' ? 'x' : 'value';
    if (this.extra === 'note' || this.extra === 'range') this.extra = null;
    this.note = '';
    this.limit = null;
  }
}
