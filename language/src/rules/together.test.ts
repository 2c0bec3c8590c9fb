import { expect, test } from 'vitest';
import type { Fix } from '../plan/finding.ts';
import type { SpreadLine } from '../plan/model.ts';
import type { Place } from '../plan/origin.ts';
import type { Problem } from './rule.ts';
import { saidOnce } from './together.ts';

const place = (start: number, uri = 'plan.spread') => ({ uri, start, end: start + 4 }) as Place;
const fix = (title: string, text: string): Fix => ({ title, edits: [{ at: place(5), text }] });
const line = (name: string) => ({ position: { name } }) as SpreadLine;
const problem = (name: string, more: Partial<Problem> = {}, kind = 'kind', own = {}): Problem =>
    ({
        at: { place: place(5) },
        what: `${name} alone.`,
        why: 'Because.',
        remedy: 'Mend it.',
        fixes: [fix('Mend', 'x')],
        positions: [line(name)],
        together: {
            kind,
            name,
            what: (names: string) => `${names} together.`,
            each: { at: { place: place(9) }, what: `${name} here.` },
            ...own,
        },
        ...more,
    }) as unknown as Problem;
const said = (problems: readonly Problem[], placeIn: (one: Problem) => Place = () => place(5)) =>
    saidOnce(problems, placeIn);

test('problems of one kind, one severity and one place become one, with each beside it', () => {
    const [all, ...more] = said([problem('A'), problem('B'), problem('C')]);
    expect(more).toEqual([]);
    expect(all).toMatchObject({
        at: place(5),
        what: 'A, B and C together.',
        why: 'Because.',
        remedy: 'Mend it.',
        fixes: [fix('Mend', 'x')],
    });
    expect(all!.related?.map(({ what }) => what)).toEqual(['A here.', 'B here.', 'C here.']);
    expect(all!.positions?.map(({ position }) => position.name)).toEqual(['A', 'B', 'C']);
});

test('one alone stays as it is, and so does what has nothing to say together', () => {
    const alone = problem('A');
    expect(said([alone])[0]).toBe(alone);
    const { together, ...mute } = problem('A');
    expect(said([mute, { ...mute }])).toHaveLength(2);
});

test('another kind, another severity, another place or another file is another problem', () => {
    expect(said([problem('A'), problem('B', {}, 'other')])).toHaveLength(2);
    expect(said([problem('A'), problem('B', { severity: 'hint' })])).toHaveLength(2);
    const byName = (shown: Record<string, Place>) => (one: Problem) => shown[one.together!.name]!;
    expect(said([problem('A'), problem('B')], byName({ A: place(5), B: place(6) }))).toHaveLength(2);
    const longer = { ...place(5), end: 11 };
    expect(said([problem('A'), problem('B')], byName({ A: place(5), B: longer }))).toHaveLength(2);
    const elsewhere = place(5, 'tackle.spread');
    expect(said([problem('A'), problem('B')], byName({ A: place(5), B: elsewhere }))).toHaveLength(2);
});

test('a reason, a remedy or a fix that only one of them has is not said of all', () => {
    const [all] = said([
        problem('A'),
        problem('B', { why: 'Other.', remedy: 'Other.', fixes: [fix('Mend', 'y')] }),
    ]);
    expect(all).not.toHaveProperty('why');
    expect(all!.remedy).toBeUndefined();
    expect(all).not.toHaveProperty('fixes');
    const [last] = said([problem('A'), problem('B'), problem('C', { remedy: 'Other.' })]);
    expect(last!.remedy).toBeUndefined();
    expect(said([problem('A', { fixes: undefined as never }), problem('B')])[0]).not.toHaveProperty('fixes');
});

test('what a rule has to say of all of them comes before what each says', () => {
    const own = { why: 'For all.', remedy: 'Mend all.', fixes: [] };
    const [all] = said([problem('A', {}, 'kind', own), problem('B', {}, 'kind', own)]);
    expect(all).toMatchObject({ why: 'For all.', remedy: 'Mend all.', fixes: [] });
});

test('two problems of one line name it once', () => {
    const a = line('A');
    const [all] = said([problem('A', { positions: [a] }), problem('A', { positions: [a] })]);
    expect(all!.what).toBe('A together.');
    expect(all!.positions).toEqual([a]);
});
