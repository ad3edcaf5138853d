import type { ChapterMaker } from '../book.js';

/** Owner's edition: who answers for what. */
export const contacts: ChapterMaker = (book) => {
  const { shop, shell } = book.assessment.model;
  return {
    key: 'contacts',
    title: 'Who to ask',
    template: 'contacts',
    data: {
      shop: { name: shop.name, place: shop.place, contact: shop.contact },
      shell: shell.id,
      vin: shell.vin,
      chassis: [shell.chassis.description, shell.chassis.document].filter(Boolean).join('; ') || undefined,
    },
  };
};
