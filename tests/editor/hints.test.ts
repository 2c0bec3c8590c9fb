import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { InlayHint } from 'vscode-languageserver-protocol';
import { type Editor, editorOver, offsetAt } from './client.ts';
import { plan, team, withCrLf } from './team.ts';

let editor: Editor;
beforeAll(async () => {
    editor = await editorOver(team);
});
afterAll(() => editor.stop());

async function hints(path: string, lines = [0, 999]): Promise<InlayHint[]> {
    const range = { start: { line: lines[0], character: 0 }, end: { line: lines[1], character: 0 } };
    const found = await editor.ask<InlayHint[] | null>('textDocument/inlayHint', {
        ...editor.whole(path),
        range,
    });
    return found ?? [];
}

/** The text with its hints in angle brackets. */
async function shown(path: string, lines?: number[]): Promise<string> {
    const text = editor.text(path);
    const found = (await hints(path, lines)).map(({ position, label }) => ({
        at: offsetAt(text, position),
        label,
    }));
    return found
        .sort((a, b) => b.at - a.at)
        .reduce(
            (rest, { at, label }) => `${rest.slice(0, at)}‹${String(label).trim()}›${rest.slice(at)}`,
            text,
        );
}

async function set(inlayHints: Record<string, boolean>): Promise<void> {
    editor.settings = { inlayHints };
    await editor.connection.sendNotification('workspace/didChangeConfiguration', { settings: null });
}

test('metres stand behind a wave, the wave behind metres, the pull behind a lure', async () => {
    await editor.open('plans/march.spread');
    const text = await shown('plans/march.spread');
    expect(text).toContain('lure broom‹pulls = 2.4 kg›');
    expect(text).toContain('back wave 2‹= 12.9 m›');
    expect(text).toContain('lure wick‹pulls = 2.4 kg›  back wave 4‹= 34.7 m› }');
    expect(text).toContain('back 45 m‹= wave 5›');
});

test('what an estimate leaves open of a pull stands behind it, and an estimate is no equation', async () => {
    const unweighed = `lure unweighed "Unweighed" chugger { length 300 mm  head 40 mm  weight 250 g }\n`;
    const text = plan.replace('lure broom', 'lure unweighed');
    await editor.open('plans/unweighed.spread', text.replace(/^spread /m, `${unweighed}spread `));
    // ½·ρ·V²·π/4·d² is 1.1 kg at 8 kn; a cup takes 0.9 to 1.3 of that, the skirt 1.3 to 2.5 times as much.
    expect(await shown('plans/unweighed.spread')).toContain(
        'lure unweighed‹pulls ≈ 2.2 kg (1.3 kg to 3.6 kg)›',
    );
});

test('a lure off its face is said to be', async () => {
    await editor.open('plans/off.spread', plan.replace('back 45 m', 'back 50 m'));
    expect(await shown('plans/off.spread')).toMatch(
        /back 50 m‹= wave \d, (back face|in the trough|on the crest)›/,
    );
});

describe('drags', () => {
    test('are told as shares of the class, shares as loads', async () => {
        await editor.open('tackle.spread');
        expect(await shown('tackle.spread')).toContain(
            'drag { set 6 kg‹= 25 % of class›  hooked 7 kg‹= 29 % of class›',
        );
        await editor.open('plans/share.spread', plan.replace('clip 4 kg', 'drag { hooked 30 % }'));
        expect(await shown('plans/share.spread')).toContain('hooked 30 %‹= 7.2 kg›');
    });

    test('of no class are told as nothing', async () => {
        await editor.open('bare.spread', 'outfit bare { drag { set 6 kg } }\n');
        expect(await hints('bare.spread')).toEqual([]);
    });
});

test('only the lines on the screen are looked at', async () => {
    const found = await hints('plans/march.spread', [20, 21]);
    expect(found.map(({ position }) => position.line)).toEqual([20, 20]);
});

test('whoever points at one is told what it stands on', async () => {
    const [pull] = await hints('plans/march.spread', [16, 18]);
    expect(pull!.tooltip).toBeUndefined();
    expect((await editor.ask<InlayHint>('inlayHint/resolve', pull)).tooltip).toBe('Measured.');
});

test('half a text has the hints of what is whole, with CR LF and letters of two units', async () => {
    const text = withCrLf(`/* 🐟🐟 */ ${plan.slice(0, plan.indexOf('back 45'))}`);
    await editor.open('plans/half.spread', text);
    expect(await shown('plans/half.spread')).toContain('back wave 4‹= 34.7 m› }');
});

test('each kind is there for whoever wants it', async () => {
    await set({ waves: false, shares: false, pull: false, units: true });
    await expect.poll(() => shown('plans/march.spread')).toContain('back 45 m‹= 148 ft›');
    expect(await shown('plans/march.spread')).not.toMatch(/pulls|wave 2‹/);
    await set({ waves: false, shares: false, pull: false, units: false });
    await expect.poll(() => hints('plans/march.spread')).toEqual([]);
    expect(editor.heard.map(({ method }) => method)).toContain('workspace/inlayHint/refresh');
});
