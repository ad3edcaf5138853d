import { anchor } from '../model/anchor.js';
import { type PagePicture, pictureId } from './pictures.js';
import type { PhotoLink, Pocket } from './pocket.js';

/** The anchor of a picture on the page. */
const photoAnchor = (photo: string): string => `p-${anchor(photo).slice(2)}`;

export function photoLinks({ pictures, say, show }: Pocket, ids: readonly string[]): readonly PhotoLink[] {
  return ids.flatMap((id): readonly PhotoLink[] => {
    const picture = pictures.get(id);
    return picture ? [photoLink(picture, { say, show })] : [];
  });
}

export function photoLink({ photo, widthPx, heightPx }: PagePicture, { say, show }: Pick<Pocket, 'say' | 'show'>): PhotoLink {
  const date = show.date(photo.taken) || say('pocket.card.undated');
  const label = [say('pocket.card.photo', { id: photo.id, date }), photo.caption ?? photo.view].filter(Boolean).join(': ');
  return { id: photo.id, to: photoAnchor(photo.id), symbol: pictureId(photo.id), window: `0 0 ${widthPx} ${heightPx}`, label };
}
