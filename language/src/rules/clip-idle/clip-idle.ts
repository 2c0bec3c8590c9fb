import { removeProperty } from '../fixes.ts';
import { rule } from '../rule.ts';
import { say } from '../say.ts';
import { practice } from '../standing.ts';

/** A clip on a line that is towed from the tip of its rod. */
export const clipIdle = rule({
    name: 'clip-idle',
    group: 'drag and strike',
    standing: practice('A line from the rod tip hangs in no clip: the reel alone holds the lure.'),
    severity: 'hint',
    summary: 'A clip is set on a line that is towed from its rod tip, where it holds nothing.',
    settings: {},

    check({ plan, lines }, _, report) {
        for (const { line } of lines) {
            const { clip, from, position } = line;
            if (from?.kind !== 'rod tip' || from.origin.voice === 'default') continue;
            // A method's clip is for the lines that have one, and so is that of the plan that this one is like.
            if (clip?.origin.voice !== 'position' || clip.origin.inherited) continue;
            report({
                at: clip,
                what: `A clip of ${say.load(clip)} is set at ${position.name}, which is towed from its rod tip.`,
                why: 'It holds nothing there: the reel alone holds the lure, and nothing was judged of that clip.',
                remedy: `Say what it hangs in (${plan.boat?.value.flatClip ? 'from flat clip' : 'from halyard 1'}), or take the clip out.`,
                related: [{ at: from, what: 'Where it is towed from is said here.' }],
                fixes: [removeProperty('Take out the clip', clip.origin)],
                positions: [line],
            });
        }
    },
});
