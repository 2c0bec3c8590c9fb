import { describe, expect, test } from 'vitest';
import { checkText, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

function rigged(hooks: string, what = 'bait', event = 'harbour-cup'): string {
    const own = what === 'bait' ? 'bait own "Own"' : `lure own "Own" ${what}`;
    return today(
        `    event ${event}\n    port short corner { ${what === 'bait' ? 'bait' : 'lure'} own  back wave 2 }`,
        `${own} {\n    hooks ${hooks}\n}`,
    );
}

describe('hook-kind', () => {
    test('natural bait has the hook that the event asks for', async () => {
        expect(await messagesOf(rigged('circle { gap 20 mm }'), 'hook-kind')).toEqual([]);
        expect((await messagesOf(rigged('single { gap 20 mm }'), 'hook-kind'))[0]).toMatch(
            /^Own has J hooks, and Harbour cup wants circle hooks with natural bait\. .* Rig circle hooks\.$/,
        );
    });

    test('the bait that stands by is the one that will be pitched: it is judged as well', async () => {
        const standing = rigged('treble { gap 20 mm }').replace('port short corner', 'centre standby');
        expect((await messagesOf(standing, 'hook-kind'))[0]).toContain('Harbour cup wants circle hooks');
    });

    test('a word that is no kind of hook asks for nothing', async () => {
        const text = rigged('single { gap 20 mm }', 'bait', 'odd').replace(
            '\nspread',
            '\nrules odd "Odd" { hooks non-offset-circle with natural bait }\nspread',
        );
        const { findings } = await checkText(text);
        expect(findings.map(({ rule }) => rule)).toContain('value');
        expect(findings.map(({ rule }) => rule)).not.toContain('hook-kind');
    });

    test('is mended by writing the kind that was asked for', async () => {
        const after = await mended(rigged('{ gap 20 mm  kind J }'), 'hook-kind');
        expect(after).toContain('kind circle');
        expect(await messagesOf(after, 'hook-kind')).toEqual([]);
        // What the library says of its own rigs is for reading.
        await expect(mended(rigged('single { gap 20 mm }'), 'hook-kind')).rejects.toThrow('offers no fix');
    });

    test('an offset circle hook is not the one that was asked for', async () => {
        expect((await messagesOf(rigged('circle { gap 20 mm\n offset }'), 'hook-kind'))[0]).toContain(
            'has offset circle hooks',
        );
    });

    test('hooks that do not say their kind get a hint to write it down', async () => {
        const { findings } = await checkText(rigged('{ gap 20 mm }'));
        const [finding] = findings.filter(({ rule }) => rule === 'hook-kind');
        expect(finding).toMatchObject({ severity: 'hint', remedy: 'Write it down: kind circle.' });
    });

    test('on a lure any single will do, a treble will not, but a plug may have it', async () => {
        expect(await messagesOf(rigged('single { gap 20 mm }', 'pusher'), 'hook-kind')).toEqual([]);
        expect((await messagesOf(rigged('treble { gap 20 mm }', 'pusher'), 'hook-kind'))[0]).toContain(
            'IGFA saltwater allows only singles on a skirted lure',
        );
        expect(await messagesOf(rigged('treble { gap 20 mm }', 'diver'), 'hook-kind')).toEqual([]);
    });

    test('no hook hangs free of a bait', async () => {
        expect((await messagesOf(rigged('circle { gap 20 mm\n dangling }'), 'hook-kind'))[0]).toContain(
            'A hook of Own hangs free',
        );
    });

    test('an event that asks for nothing gets nothing', async () => {
        const easy = rigged('single { gap 20 mm }', 'bait', 'easy').replace(
            '\nspread',
            '\nrules easy "Easy" { hooks any with natural bait }\nspread',
        );
        expect(await messagesOf(easy, 'hook-kind')).toEqual([]);
    });
});
