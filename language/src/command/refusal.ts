/** The command cannot do what it was asked, and says why in a sentence or two; it ends with 2. */
export class Refusal extends Error {}

/** Sentences for what an operating system says about a file. */
export function reasonOf(error: unknown): string {
    const code = (error as NodeJS.ErrnoException | undefined)?.code;
    switch (code) {
        case 'ENOENT':
        case 'ENOTDIR':
            return 'is not there';
        case 'EACCES':
        case 'EPERM':
            return 'may not be read or written by you';
        case 'ELOOP':
            return 'is a link that leads back to itself';
        case 'EISDIR':
            return 'is a folder';
        case 'ENAMETOOLONG':
            return 'has a longer name than this system allows';
        case 'ENOSPC':
            return 'does not fit: the disk is full';
        case 'EROFS':
            return 'is on a disk that is read-only';
        case 'EMFILE':
        case 'ENFILE':
            return 'could not be opened: too many files are open';
        default:
            return `could not be read (${code ?? (error instanceof Error ? error.message : String(error))})`;
    }
}
