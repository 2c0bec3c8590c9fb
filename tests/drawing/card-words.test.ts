import { describe, expect, test } from 'vitest';
import { evenRoom, fillColumns, type Piece } from '../../language/src/drawing/card/piece.ts';
import { sectionsOf } from '../../language/src/drawing/card/sections.ts';
import { type Carded, cardedText, exampleOf } from './card-plans.ts';

const section = ({ card }: Carded, title: string) =>
    sectionsOf(card, true).find((each) => each.title === title)?.items ?? [];

describe('a plan that is like another one, with lines left out or changed over', () => {
    test('has no step, fallback, waiver or role on its card for a line that is not out', async () => {
        for (const name of ['bank-rough', 'bank-afternoon', 'weed-line-chop']) {
            const example = await exampleOf(name);
            const out = example.analysed.lines.map(({ line }) => line.position.name);
            const fished = example.card.rows.filter(({ role }) => role === 'fished');
            const steps = section(example, 'Setting, first to last').filter(({ number }) => number);
            expect(steps.map(({ number }) => number)).toEqual(fished.map((_, index) => index + 1));
            for (const { lead, words } of steps) {
                expect(out).toContain(`${lead![0]!.toLowerCase()}${lead!.slice(1)}`);
                expect(words).toMatch(/Out to .*Towed from /);
            }
        }
        expect(section(await exampleOf('bank-rough'), 'If something is out')[0]).toEqual({
            lead: 'A hand short',
            words: 'Chain stays, Petra takes the leader.',
        });
        expect(section(await exampleOf('weed-line'), 'Accepted by the team')).toHaveLength(2);
        expect(section(await exampleOf('weed-line-chop'), 'Accepted by the team')).toEqual([]);
    });

    test('keeps what its team says of the order where a line of it is out', async () => {
        const { card } = await exampleOf('bank-afternoon');
        expect(card.setting.order[0]!.position).toBe('shotgun');
        expect(card.setting.stated?.because).toContain('the centre clip');
    });
});

test('every load of a line stands in the unit of its class, and in the other one', async () => {
    for (const name of ['weed-line', 'slow-baits']) {
        const { card } = await exampleOf(name);
        for (const { lineClass, clip, drags } of card.rows.filter(({ role }) => role === 'fished')) {
            expect(lineClass!.own).toMatch(/ lb$/);
            for (const load of [clip!, ...Object.values(drags)]) {
                expect(load.own).toMatch(/ lb$/);
                expect(load.other).toMatch(/ kg$/);
            }
        }
    }
});

test('a team’s own rules are no event', async () => {
    const captions = async (name: string) => (await exampleOf(name)).card.facts.map(({ caption }) => caption);
    expect(await captions('weed-line')).toContain('Rules');
    expect(await captions('weed-line')).not.toContain('Event');
    expect(await captions('bank-settled')).toContain('Event');
});

test('what is quoted from a plan stands between marks that a crew reads', async () => {
    const { card } = await cardedText('spread odd "Odd" { speed 8 kg  port short corner { back 12 m } }');
    const said = JSON.stringify(card);
    expect(said).toContain('“speed 8 kg” cannot be used');
    expect(said).not.toContain('`');
});

test('a section that goes on is named again, and what fits on a page stays on it', () => {
    const named: Piece = { height: 70, keep: true, draw: () => 'again' };
    const items = Array.from({ length: 7 }, (): Piece => ({ height: 100, again: named, draw: () => 'item' }));
    for (const columns of [1, 2, 3]) {
        const [filled, rest] = fillColumns(items, columns, evenRoom(items, columns));
        expect(rest).toEqual([]);
        expect(filled.flat().filter((piece) => piece !== named)).toEqual(items);
        for (const column of filled) expect(column[0]).toBe(named);
    }
    // Too little room for the name and an item: nothing is put there, and nothing is lost.
    expect(fillColumns(items, 2, 150)).toEqual([[[], []], items]);
    const blank: Piece = { height: 14, blank: true, draw: () => '' };
    expect(fillColumns([blank, { ...items[0]!, again: undefined }], 1, 100)[0][0]).toHaveLength(1);
});

test('a distance that nobody wrote stands in the crew’s own unit and in the other one', async () => {
    for (const [name, told] of [
        ['bank-settled', /^fish [\d.]+ m \([\d.]+ ft\) to (port|starboard)$/],
        ['slow-baits', /^fish [\d.]+ ft \([\d.]+ m\) to (port|starboard)$/],
    ] as const) {
        const { card } = await exampleOf(name);
        const reasons = card.clearing.after.flatMap(({ order }) => order.map(({ reason }) => reason));
        const aside = reasons.filter((reason) => reason.startsWith('fish '));
        expect(aside.length).toBeGreaterThan(0);
        for (const each of aside) expect(each).toMatch(told);
        expect(card.facts.find(({ caption }) => caption === 'Sea')!.value).toMatch(/ m \([\d.]+ ft\)/);
    }
});
