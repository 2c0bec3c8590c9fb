import { describe, expect, test } from 'vitest';
import { checkText, expectMarked, mended, messagesOf, today } from '../../../../tests/language/marked.ts';

const own = `lure mine "Mine" pusher { pull 3 kg at 8 kn }
method soft "Soft" { style drop-back }
method hard "Hard" { style direct }`;
const clipped = (clip: string, conditions = 'sea 0.5 m', more = '') =>
    today(`    ${conditions}\n    port short corner { lure mine  back wave 2  clip ${clip}  ${more} }`, own);
const severityOf = async (text: string) =>
    (await checkText(text)).findings.find(({ rule }) => rule === 'clip-false-release')?.severity;

// Surge, estimate: 1.2 times the pull up to a sea of 0.5 m, 1.275 at 0.75 m, 1.5 from 1.5 m on.
describe('clip-false-release', () => {
    test.each([
        ['0.5 m', '3.5 kg', '3.6 kg', '3.6 kg'],
        ['0.75 m', '3.7 kg', '3.8 kg', '3.9 kg'],
        ['2 m', '4.4 kg', '4.5 kg', '4.5 kg'],
    ])('in a sea of %s a clip at %s opens for a pull of %s; %s holds', async (sea, clip, pull, setting) => {
        const [message] = await messagesOf(clipped(clip, `sea ${sea}`), 'clip-false-release');
        expect(message).toBe(
            `The clip at port short corner opens at ${clip}, and Mine pulls ${pull} with surge in a sea of ${sea}. Each false release is a lure that does not fish until somebody has seen it. Set it to ${setting} or more.`,
        );
    });

    test('in a plan that is like another the sea or the speed is what changed, and is said once', async () => {
        const calm = clipped('3.6 kg').replace(
            '\n}\n',
            '\n    starboard long corner { lure mine  back wave 3  clip 3.7 kg }\n}\n',
        );
        await expectMarked(
            `${calm}spread rough like today { sea 2 m }
//                            ^^^ clip-false-release: The clips at port short corner and starboard long corner are set below what their lures pull with surge in a sea of 2 m.
`,
            'clip-false-release',
        );
        const { findings } = await expectMarked(
            `${calm}spread fast like today { speed 10 kn }
//                             ^^^^^ clip-false-release: The clips at port short corner and starboard long corner are set below what their lures pull by themselves.
`,
            'clip-false-release',
        );
        const [finding] = findings.filter(({ rule }) => rule === 'clip-false-release');
        expect(finding?.related.map(({ what }) => what)).toEqual([
            expect.stringMatching(/^The clip at port short corner opens at 3\.6 kg, and Mine pulls/),
            expect.stringMatching(/^The clip at starboard long corner opens at 3\.7 kg, and Mine pulls/),
        ]);
    });

    test('a clip that holds the surge is left alone, and so is one that nobody set', async () => {
        expect(await messagesOf(clipped('3.6 kg'), 'clip-false-release')).toEqual([]);
        expect(await messagesOf(clipped('4.5 kg', 'sea 3 m'), 'clip-false-release')).toEqual([]);
        await expectMarked(clipped('3.6 kg').replace('clip 3.6 kg', ''), 'clip-false-release');
    });

    test('without a sea nobody knows the surge, and only the pull itself counts', async () => {
        expect(await messagesOf(clipped('3.1 kg', ''), 'clip-false-release')).toEqual([]);
        const [message] = await messagesOf(clipped('2.9 kg', ''), 'clip-false-release');
        expect(message).toContain('opens at 2.9 kg, and Mine pulls 3 kg by itself. It opens as soon as');
    });

    test('what opens by itself is an error where the pull was measured, a warning where it was not', async () => {
        expect(await severityOf(clipped('2.9 kg'))).toBe('error');
        const unmeasured = clipped('0.4 kg').replace('{ pull 3 kg at 8 kn }', '{ head 45 mm }');
        expect(await severityOf(unmeasured)).toBe('warning');
    });

    test('a drop-back lives with a few false releases', async () => {
        expect(await severityOf(clipped('3.4 kg', 'sea 0.5 m\n    method soft'))).toBe('hint');
        expect(await severityOf(clipped('3.4 kg', 'sea 0.5 m\n    method hard'))).toBe('warning');
    });

    test('is mended by setting the clip, in the unit of its author', async () => {
        const after = await mended(clipped('7 lb'), 'clip-false-release');
        expect(after).toContain('clip 8 lb');
        expect(await messagesOf(after, 'clip-false-release')).toEqual([]);
    });

    test('does not send a crew from one fault into the other', async () => {
        const torn = clipped('3.2 kg', 'sea 0.5 m', 'drag { hooked 3.4 kg }');
        const [message] = await messagesOf(torn, 'clip-false-release');
        expect(message).toMatch(
            /No setting holds this lure and opens for a fish at 3\.4 kg: tow one that pulls less\.$/,
        );
        await expect(mended(torn, 'clip-false-release')).rejects.toThrow('offers no fix');
        expect(await messagesOf(torn, 'clip-stiff')).toEqual([]);
    });

    test('a team may want more than it takes', async () => {
        const careful = clipped('4 kg', 'sea 0.5 m\n    rule clip-false-release { margin 125 % }');
        expect((await messagesOf(careful, 'clip-false-release'))[0]).toContain('Set it to 4.5 kg or more');
    });
});
