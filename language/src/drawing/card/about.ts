import type { Spread } from '../../plan/model.ts';
import type { CardContents } from './contents.ts';
import type { PdfWishes } from './pdf.ts';

/** What the file of a card says of itself: its title, and the author and day that the plan gives. */
export function aboutCard({ title }: CardContents, { date, author }: Spread): Omit<PdfWishes, 'faces'> {
    return {
        title: `${title} – deck card`,
        language: 'en',
        ...(author && { author: author.value }),
        ...(date && { made: new Date(`${date.value}T12:00:00Z`) }),
    };
}
