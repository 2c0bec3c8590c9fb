import { expect, test } from 'vitest';
import { checkText, messagesOf, relatedOf } from '../../language/marked.ts';

/*
 * What several lines suffer from one cause is one sentence about all of them, with each beside it. Each test is named
 * after the rule that it is about.
 */

const own = `lure mine "Mine" pusher { pull 3 kg at 8 kn }`;
/** Two lines in a plan, and a plan that is like it but for a change. */
const likeIt = (port: string, starboard: string, change: string) => `use "cockpit.spread"
${own}
spread before {
    boat fulmar
    speed 8 kn
    sea 0.5 m
    port short corner { lure mine  back wave 2  ${port} }
    starboard long corner { lure mine  back wave 3  ${starboard} }
}
spread after like before { ${change} }
`;
const placesOf = async (text: string, rule: string) =>
    (await checkText(text)).findings
        .filter((finding) => finding.rule === rule)
        .map(({ at, severity }) => [text.slice(at.start, at.end), severity]);

test('clip-false-release: clips that one sea opens are told once, with what to do about all', async () => {
    const text = likeIt('clip 3.6 kg', 'clip 3.7 kg', 'sea 2 m');
    expect(await messagesOf(text, 'clip-false-release')).toEqual([
        'The clips at port short corner and starboard long corner are set below what their lures pull with surge in a sea of 2 m. Each false release is a lure that does not fish until somebody has seen it. Set each to what its lure pulls, or change back what makes them pull more.',
    ]);
    const { findings } = await checkText(text);
    const [finding] = findings.filter(({ rule }) => rule === 'clip-false-release');
    expect(finding?.fixes).toEqual([]);
    // One of the two by itself shows the sea as well; where the lure alone opens it, the sea has no part in it.
    const one = text.replace('clip 3.7 kg', 'clip 9 kg');
    expect(await relatedOf(one, 'clip-false-release')).toContain('The sea is said here.');
    const alone = await relatedOf(one.replace('clip 3.6 kg', 'clip 2 kg'), 'clip-false-release');
    expect(alone).toContain('What Mine pulls is said here.');
    expect(alone).not.toContain('The sea is said here.');
});

test('clip-false-release: what a team asks for beyond the pull is said, where the clip would hold the pull', async () => {
    const text = (clip: string, margin: string) => `use "cockpit.spread"
${own}
spread today {
    boat fulmar
    speed 8 kn
    sea 0.5 m
    rule clip-false-release { margin ${margin} }
    port short corner { lure mine  back wave 2  clip ${clip} }
}
`;
    // Surge makes 3.6 kg of the 3 kg, and 120 % of that are 4.32 kg.
    expect((await messagesOf(text('4.3 kg', '120 %'), 'clip-false-release'))[0]).toContain(
        'and Mine pulls 3.6 kg with surge in a sea of 0.5 m, of which 120 % is asked for. ',
    );
    expect(await messagesOf(text('4.33 kg', '120 %'), 'clip-false-release')).toEqual([]);
    expect((await messagesOf(text('3.5 kg', '100 %'), 'clip-false-release'))[0]).not.toContain('asked for');
    expect((await messagesOf(text('2.9 kg', '120 %'), 'clip-false-release'))[0]).not.toContain('asked for');
});

test('drag-under-tow: reels that one sea or speed overcomes are told once, where that changed', async () => {
    const reels = (change: string) =>
        likeIt('from rod tip  drag { set 3.6 kg }', 'from rod tip  drag { set 3.7 kg }', change);
    const rough = reels('sea 2 m');
    expect(await messagesOf(rough, 'drag-under-tow')).toEqual([
        'Set drag at port short corner and starboard long corner is below what the lures pull with surge in a sea of 2 m. No clip holds this line, so the lure takes it off the reel. Raise set drag on each, or tow them from clips.',
    ]);
    expect(await placesOf(rough, 'drag-under-tow')).toEqual([['2 m', 'hint']]);
    expect(await relatedOf(rough, 'drag-under-tow')).toEqual([
        expect.stringMatching(/^Set drag at port short corner is 3\.6 kg, and Mine pulls 4\.5 kg with surge/),
        expect.stringMatching(
            /^Set drag at starboard long corner is 3\.7 kg, and Mine pulls 4\.5 kg with surge/,
        ),
    ]);
    // The pull grows with the square of the speed: 4.7 kg at 10 kn.
    const fast = reels('speed 10 kn');
    expect((await messagesOf(fast, 'drag-under-tow'))[0]).toMatch(
        /^Set drag at port short corner and starboard long corner is below what the lures pull by themselves\. /,
    );
    expect(await placesOf(fast, 'drag-under-tow')).toEqual([['10 kn', 'warning']]);
});

/** Two lures laid out on their faces at 8 kn: 22.8 and 33.6 m behind the transom, by linear theory. */
const laidOut = (change: string) => `use "cockpit.spread"
spread before {
    boat fulmar
    speed 8 kn
    shotgun { lure wisp  back 33.6 m }
    port short corner { lure broad  back 22.8 m }
}
spread after like before { ${change} }
`;

test('wave-face: lures that another speed takes off their faces are told once, at that speed', async () => {
    // At 7.3 kn the waves are 9.03 m long: the crest of the third is 22.6 m back, that of the fourth 31.6 m.
    const slow = laidOut('speed 7.3 kn');
    expect(await messagesOf(slow, 'wave-face')).toEqual([
        'Shotgun and port short corner are off their wave faces at 7.3 kn. A lure works on the front face, in clean water. Move each to a face of this speed, or tow at the speed that they were laid out for.',
    ]);
    expect(await placesOf(slow, 'wave-face')).toEqual([['7.3 kn', 'warning']]);
    // A wave apart.
    expect(await relatedOf(slow, 'wave-face')).toEqual([
        'Shotgun runs on the back of wave 4. Move it to 28 m (wave 4) or 37 m (wave 5).',
        'Port short corner runs on the crest of wave 3. Move it to 19 m (wave 3) or 28 m (wave 4).',
    ]);
    expect(await messagesOf(laidOut('speed 8.1 kn'), 'wave-face')).toEqual([]);
});

test('wave-band: where one of two is waived, the other is told at the speeds, with its place beside them', async () => {
    const wide = `use "cockpit.spread"
spread today {
    boat fulmar
    speed 8 kn
    speeds 7.4 kn to 8.5 kn
    port long rigger { lure wisp  back wave 5 }
    starboard short rigger { lure gulp  back wave 4 }
    waive wave-band on port long rigger because "it comes in"
}
`;
    expect((await messagesOf(wide, 'wave-band'))[0]).toMatch(/^Starboard short rigger stays on wave 4 at /);
    expect(await placesOf(wide, 'wave-band')).toEqual([['speeds 7.4 kn to 8.5 kn', 'warning']]);
    expect(await relatedOf(wide, 'wave-band')).toEqual(['Starboard short rigger runs here.']);
});

test('wave-band: a lure that is off its face has no band to leave', async () => {
    const off = `use "cockpit.spread"
spread today {
    boat fulmar
    speed 8 kn
    speeds 7.4 kn to 8.5 kn
    shotgun { lure wisp  back 29 m }
}
`;
    expect(await messagesOf(off, 'wave-face')).toHaveLength(1);
    expect(await messagesOf(off, 'wave-band')).toEqual([]);
});
