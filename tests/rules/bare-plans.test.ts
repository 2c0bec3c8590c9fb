import { expect, test } from 'vitest';
import { messageOf } from '../../language/src/plan/finding.ts';
import { checkText } from '../language/marked.ts';

/** Things of which hardly anything is known yet, each a little more than the one before it. */
const tackle = `
use "cockpit.spread"
outfit bare { }
outfit unlabelled { line nylon { } }
outfit classed { line nylon { class 24 kg } }
outfit labelled { line nylon { breaks 24 kg } }
outfit doubled { double { } }
outfit reeled { reel { }  rod { } }
outfit spooled { reel { spool { full 100 mm }  capacity 800 m of 0.71 mm }  line nylon { class 24 kg } }
outfit dragged { drag { set 3 kg  hooked 7 kg  full 10 kg } }
lure nothing pusher { }
lure headless { length 300 mm }
lure hooked pusher { hooks single { } }
lure twice pusher { hooks twin { } }
lure led pusher { leader nylon { } }
lure strong pusher { leader nylon { breaks 100 kg } }
lure timed pusher { leader nylon { inspected 2026-01-01 }  hooks single { inspected 2026-01-01 } }
teaser toy { }
method unsaid { }
method loose { style drop-back }
species unknown { }
boat hull { }
boat poles { outriggers { } }
rules lax { }
rules strict {
    written saltwater
    at most 9 lines
    class among 24 kg
    hooks circle with natural bait
    teasers hookless
    stretch margin 15 cm
}`;

const corners = [
    'lure broad  back wave 2',
    'lure nothing  back wave 2',
    'lure nothing',
    'bait live "scad"',
    'back 12 m',
    'outfit medium-1',
    'lure headless  back 12 m  outfit bare',
    'lure hooked  back 12 m  outfit unlabelled',
    'lure twice  back 12 m  outfit classed',
    'lure led  back 12 m  outfit labelled',
    'lure strong  back 12 m  outfit doubled',
    'lure timed  back 12 m  outfit reeled',
    'lure nothing  back 12 m  outfit spooled',
    'lure nothing  back 12 m  outfit dragged',
    'lure nothing  clip 3 kg',
    'lure nothing  clip 3 kg  method unsaid',
    'lure nothing  clip 3 kg  method loose',
    'lure nothing  drag { set 1 kg }  from rod tip',
    'lure nothing  loop 1 m  wait 3 s  wraps 4',
    'hooks single { }  leader nylon { }',
];

const seas = [
    '',
    'speed 8 kn',
    'boat hull  speed 8 kn',
    'boat poles  speed 8 kn  turn within 60 m',
    'boat fulmar',
    'boat fulmar  turn within 60 m',
    'target unknown  method unsaid  event lax',
    'boat fulmar  event strict  crew 4  date 2026-03-02',
];

const plan = (sea: string, corner: string, other = '') =>
    `${tackle}
spread plan {
    ${sea}
    port short corner { ${corner} }
    starboard long rigger { ${other} }
    port squid chain { }
    centre standby { }
}`;

/** What can be said of a plan although most of it is missing. */
const spoken = /No plan uses|is towed from a rod tip|says no class/;

// What a rule reads is missing in another place each time: it has nothing to go by, and must not stumble.
async function expectSilence(...texts: string[]) {
    for (const text of texts) {
        const { findings } = await checkText(text);
        // That most of it is missing is said by the rule that is there to say it, and by no other.
        const others = findings.filter(({ rule }) => rule !== 'incomplete').map(messageOf);
        expect(others.filter((message) => !spoken.test(message))).toEqual([]);
    }
}

test.each(corners)(
    'nothing is made up about a line of which this is all that is known: %s',
    async (corner) => {
        await expectSilence(
            plan('boat fulmar  speed 8 kn  event strict', corner),
            plan('speed 8 kn', corner, 'lure dart  back 30 m  outfit medium-2'),
        );
    },
);

test.each(seas)('nothing is made up about a day of which this is all that is known: %s', async (sea) => {
    await expectSilence(
        plan(sea, 'lure broad', 'teaser toy'),
        plan(sea, 'lure nothing  outfit bare'),
        plan(sea, 'bait dead "scad"  clip 3 kg', 'lure dart  back wave 4'),
    );
});

test('nothing is made up about a plan without a line', async () => {
    await expectSilence(`${tackle}\nspread plan { }`);
});
