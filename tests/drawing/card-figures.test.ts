import { expect, test } from 'vitest';
import { sectionsOf } from '../../language/src/drawing/card/sections.ts';
import { exampleOf } from './card-plans.ts';

const wordsOf = (card: Awaited<ReturnType<typeof exampleOf>>['card'], id: string) =>
    sectionsOf(card)
        .find((section) => section.id === id)!
        .items.map(({ words }) => words);

test('a card of a plan in feet and pounds tells in them what nobody wrote: shares, waves, turns, where the fish is', async () => {
    const { card } = await exampleOf('weed-line');
    for (const { back, drags } of card.rows) {
        expect(back!.own).toMatch(/ ft$/);
        for (const drag of Object.values(drags)) expect(drag.own).toMatch(/ lb$/);
    }
    for (const { clean } of card.turns.sides) expect(clean!.radius.own).toMatch(/ ft$/);
    expect(wordsOf(card, 'clearing').join('\n')).toMatch(/\(fish \d+ ft \(\d+ m\) to port\)/);
    expect(wordsOf(card, 'clearing').join('\n')).not.toMatch(/fish \d+ m/);
});

test('what leans on an estimate is marked, and the mark is told', async () => {
    const { card } = await exampleOf('bank-settled');
    const turns = wordsOf(card, 'turns').join('\n');
    expect(turns.match(/down to \d/g)).toBeNull();
    expect(turns.match(/down to ~\d/g)!.length).toBeGreaterThan(1);
    expect(turns).not.toMatch(/half a turn in \d/);
    expect(wordsOf(card, 'figures')).toContain('A ~ before a figure: it leans on an estimate.');
    // The boat's crests were measured: nothing about its waves is marked.
    expect(wordsOf(card, 'speed').join('\n')).not.toContain('~');
});
