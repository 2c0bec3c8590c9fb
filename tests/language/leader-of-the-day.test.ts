import { describe, expect, test } from 'vitest';
import { checkText } from './marked.ts';

const KILOGRAM = 9.80665;

const towed = `
lure ink "Ink" pusher {
    length 300 mm
    leader nylon { breaks 60 kg  length 4.2 m  crimp 90 %  inspected 2024-05-01 }
    hooks single { gap 40 mm  length 80 mm }
}
bait scad "Scad" { kind dead  leader fluorocarbon { breaks 40 kg  length 2 m } }
teaser chain "Chain" { length 900 mm  leader nylon { breaks 200 kg  length 6 m } }`;

async function lineWith(what: string) {
    const { resolved } = await checkText(`${towed}\nspread calm { port short corner { ${what} } }`);
    const line = resolved.spreads[0]!.lines[0]!;
    return { leader: line.leader, hooks: line.hooks, line };
}

describe('a leader or hooks that a position brings for the day', () => {
    test('without a name are the lure’s, with what is said here', async () => {
        const { leader, line } = await lineWith('lure ink  leader { length 3 m }');
        expect(leader?.length?.si).toBe(3);
        expect(leader?.breaks?.si).toBeCloseTo(60 * KILOGRAM, 9);
        expect(leader?.inspected?.value).toBe('2024-05-01');
        expect(leader?.title).toBe(line.lure?.value.leader?.title);
        // Nylon is a definition of the library's: what it says of every leader holds here as well.
        expect(leader?.material).toMatchObject({ value: line.lure?.value.leader?.material?.value });
        const { hooks } = await lineWith('lure ink  hooks { gap 52 mm }');
        expect(hooks?.gap?.si).toBeCloseTo(0.052, 9);
        expect(hooks?.length?.si).toBeCloseTo(0.08, 9);
    });

    test('with a name are another, and nothing of the lure’s is left', async () => {
        const { leader } = await lineWith('lure ink  leader wire { length 3 m }');
        expect(leader?.length?.si).toBe(3);
        expect(leader?.breaks).toBeUndefined();
        expect(leader?.inspected).toBeUndefined();
        const { hooks } = await lineWith('lure ink  hooks twin { gap 52 mm }');
        expect(hooks?.length).toBeUndefined();
    });

    test('change what a bait or a teaser has as well', async () => {
        const bait = await lineWith('bait scad  leader { length 3 m }');
        expect(bait.leader?.breaks?.si).toBeCloseTo(40 * KILOGRAM, 9);
        const teaser = await lineWith('teaser chain  leader { length 3 m }');
        expect(teaser.leader?.breaks?.si).toBeCloseTo(200 * KILOGRAM, 9);
    });

    test('stand alone where the lure has none, and are absent where nobody wrote any', async () => {
        const alone = await lineWith('bait live "mullet"  leader { length 3 m }');
        expect(alone.leader?.length?.si).toBe(3);
        expect(alone.leader?.breaks).toBeUndefined();
        const none = await lineWith('lure ink');
        expect(none.leader).toBeUndefined();
        expect(none.hooks).toBeUndefined();
    });

    test('take one thing away and leave the rest', async () => {
        const { leader } = await lineWith('lure ink  leader { no inspected }');
        expect(leader?.inspected).toBeUndefined();
        expect(leader?.length?.si).toBe(4.2);
    });

    test('keep the strength that the weakest link is found by', async () => {
        const { plans } = await checkText(`${towed}
outfit fifty { line nylon { class 24 kg  breaks 70 kg } }
spread calm { port short corner { outfit fifty  lure ink  leader { length 3 m } } }`);
        const weakest = plans[0]!.lines[0]!.weakest!;
        // A crimp at 90 % of 60 kg, under a line of 70 kg.
        expect(weakest.known && weakest.value.ranked[0]).toMatchObject({ piece: 'leader', joint: 'crimp' });
    });
});
