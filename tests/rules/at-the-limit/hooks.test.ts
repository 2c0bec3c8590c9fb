import { describe, expect, test } from 'vitest';
import { messagesOf, relatedOf, today } from '../../language/marked.ts';

/*
 * Hooks: of what kind, how far apart, and on what. What is exactly at its limit keeps it, what is a hair beyond does not; and the
 * sentences that only a rare plan brings about. Each test is named after the rule that it is about.
 */

describe('teaser-hooks', () => {
    test('teaser-hooks: a teaser without hooks carries none, whether or not it has a name', async () => {
        const club = 'rules club "Club" { teasers hookless }\n';
        const text = (hooks: string) =>
            today(`    event club\n    port squid chain { back 12 m  hooks ${hooks} }`, club);
        expect(await messagesOf(text('single { }'), 'teaser-hooks')).toEqual([
            'Port squid chain carries hooks, and Club wants teasers hookless. A hooked teaser counts as one more line. Take the hooks off.',
        ]);
        expect(await relatedOf(text('single { }'), 'teaser-hooks')).toEqual(['The rule is written here.']);
        expect(await messagesOf(text('{ count 0 }'), 'teaser-hooks')).toEqual([]);
    });
});

describe('hook-kind', () => {
    const rigged = (what: string, event = 'harbour-cup', own = '') =>
        today(`    event ${event}\n    port short corner { ${what}  back wave 2 }`, own);

    test('hook-kind: hooks that do not say their kind are asked to, in a whole sentence', async () => {
        const text = rigged('bait own', 'harbour-cup', 'bait own "Own" { hooks { gap 20 mm } }');
        expect(await messagesOf(text, 'hook-kind')).toEqual([
            'The hooks of Own do not say their kind, and Harbour cup wants circle hooks with natural bait. Nobody can say whether a fish on them counts. Write it down: kind circle.',
        ]);
    });

    test('hook-kind: a double is no single either, and a hook that hangs free is fixed to the bait', async () => {
        expect((await messagesOf(rigged('lure broad  hooks { kind double }'), 'hook-kind'))[0]).toMatch(
            /^Broad has double hooks, and IGFA saltwater allows only singles on a skirted lure\. .* Rig single hooks\.$/,
        );
        const loose = rigged('bait own', 'harbour-cup', 'bait own "Own" { hooks circle { dangling } }');
        expect((await messagesOf(loose, 'hook-kind'))[0]).toMatch(/ Fix it to the bait\.$/);
    });

    test('hook-kind: only a bait has a hook that hangs free of it, and bare hooks are on nothing', async () => {
        expect(await messagesOf(rigged('lure broad  hooks { dangling }'), 'hook-kind')).toEqual([]);
        expect(await messagesOf(rigged('hooks treble { dangling }'), 'hook-kind')).toEqual([]);
    });

    test('hook-kind: a pack that speaks of baits alone forbids a treble on a lure as well', async () => {
        const pack = (own: string) => `rules mine "Mine" { ${own} }\nrules day "Day" { written mine }`;
        const treble = 'lure broad  hooks { kind treble }';
        expect(
            await messagesOf(rigged(treble, 'day', pack('natural { count 2 }')), 'hook-kind'),
        ).toHaveLength(1);
        expect(
            await messagesOf(rigged(treble, 'day', pack('skirted { count 2 }')), 'hook-kind'),
        ).toHaveLength(1);
        expect(await messagesOf(rigged(treble, 'day', pack('at most 5 lines')), 'hook-kind')).toEqual([]);
    });
});

test('hook-fit: a lure without hooks and hooks without a lure have nothing to fit', async () => {
    for (const towed of [
        'hooks single { gap 1 mm  point down }',
        'lure blank',
        'bait live "scad"  hooks single { gap 1 mm }',
    ])
        expect(
            await messagesOf(
                today(`    port short corner { ${towed}  back wave 2 }`, 'lure blank { head 90 mm }'),
                'hook-fit',
            ),
        ).toEqual([]);
});

test('hook-overhang, hook-spacing: hooks that are rigged to no lure are not judged as a lure’s', async () => {
    const text = (towed: string) =>
        today(
            `    event harbour-cup\n    port short corner { ${towed}  back wave 2 }`,
            'lure deep "Deep" diver { }',
        );
    const hooks = 'hooks twin { length 60 mm  overhang 200 mm  spacing 700 mm }';
    expect(await messagesOf(text(hooks), 'hook-overhang')).toEqual([]);
    expect(await messagesOf(text(`lure deep  ${hooks}`), 'hook-overhang')).toEqual([]);
    expect(await messagesOf(text(`lure broad  ${hooks}`), 'hook-overhang')).toHaveLength(1);
    expect(await messagesOf(text(hooks), 'hook-spacing')).toEqual([]);
    expect(await messagesOf(text(`lure deep  ${hooks}`), 'hook-spacing')).toEqual([]);
    expect(await messagesOf(text(`lure broad  ${hooks}`), 'hook-spacing')).toHaveLength(1);
});

test('hook-spacing: 12 in are allowed, and no more', async () => {
    const text = (spacing: string) =>
        today(
            `    event harbour-cup\n    port short corner { lure broad  back wave 2  hooks twin { length 60 mm  spacing ${spacing} } }`,
        );
    expect(await messagesOf(text('30.48 cm'), 'hook-spacing')).toEqual([]);
    expect(await messagesOf(text('30.5 cm'), 'hook-spacing')).toHaveLength(1);
});
