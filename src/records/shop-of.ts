import { fieldsInModel, partInModel } from './read-model.js';
import type { RecordBase } from './record-base.js';
import { LIMIT_FIELDS, type Limits, type Shop, type ShopForm } from './shop.js';

/** The shop of a store; one without a shop.yaml, or with a broken one, still has the default limits. */
export function shopOf(base: Pick<RecordBase, 'id' | 'source' | 'typed'>, form: ShopForm | undefined): Shop {
  const given = { id: 'shop', path: [] };
  const { shop, limits, ...rest } = partInModel('shop', form ?? {}, given);
  return {
    ...rest,
    ...base,
    name: shop?.name ?? '',
    place: shop?.place,
    contact: shop?.contact,
    telephone: shop?.telephone,
    notice: shop?.notice,
    limits: limits ?? (fieldsInModel(LIMIT_FIELDS, {}, { ...given, read: {} }) as unknown as Limits),
  };
}
