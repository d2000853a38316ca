import Link from "next/link";
import { allergenWord } from "#lib/safety/index.ts";
import type { FoodView } from "#lib/use-cases/larder/load-food.ts";
import type { ProductFields } from "#lib/use-cases/larder/product.input.ts";
import type { ProductView } from "#lib/use-cases/larder/read-products.ts";
import { Icon } from "#app/_ui/icon.tsx";
import { ProductForm } from "../product-form.client.tsx";
import { RetireButton } from "../retire-button.client.tsx";
import styles from "../larder.module.css";

/** The food as sold, and what can stand in while it is not. */
export function FoodProducts({ view }: { readonly view: FoodView }) {
  const { products, standIns, shops, currency, fields } = view;
  return (
    <section className="sheet">
      <h2>Products</h2>
      {products.length === 0 && <p className="quiet">No product is on record for it.</p>}
      {products.map((product) => (
        <OneProduct key={product.fields.id} product={product} view={view} />
      ))}
      {standIns && (
        <>
          <h3>What can stand in</h3>
          {standIns.length === 0 && (
            <p className="quiet">No other food of its family or group has that part.</p>
          )}
          <ul className={styles.standIns}>
            {standIns.map(({ id, name, why, brings }) => (
              <li key={id}>
                <Link href={`/larder/${id}`} prefetch={false}>
                  {name}
                </Link>
                , {why}
                {brings.length > 0 &&
                  `; brings ${brings.map(allergenWord).join(", ")}: check the label`}
              </li>
            ))}
          </ul>
        </>
      )}
      <details className={styles.more}>
        <summary>Add a product</summary>
        <ProductForm standing={emptyProduct(fields.id, shops)} shops={shops} currency={currency} />
      </details>
    </section>
  );
}

function OneProduct({ product, view }: { readonly product: ProductView; readonly view: FoodView }) {
  const { fields, say, prices, soldAt, isRetired, recallNote } = product;
  const holds = [
    ...say.allergens.map(allergenWord),
    ...say.maybeAllergens.map((allergen) => `${allergenWord(allergen)} (check the label)`),
  ];
  return (
    <div className={styles.product}>
      <h3>{fields.name}</h3>
      <p className="row">
        {recallNote !== null && (
          <span className="tag broken">
            <Icon name="stop" />
            recalled
          </span>
        )}
        {fields.status !== "available" && (
          <span className="tag">{fields.status === "out" ? "out of stock" : fields.status}</span>
        )}
        {fields.provenance !== "bought" && (
          <span className="tag">{fields.provenance}: disclose</span>
        )}
        {isRetired && <span className="tag">retired</span>}
      </p>
      <p className="small">
        {[
          fields.flavour,
          fields.packGrams && `${fields.packGrams} g a pack`,
          soldAt && `at ${soldAt}`,
          `holds ${holds.length === 0 ? "no listed allergen on record" : holds.join(", ")}`,
        ]
          .filter(Boolean)
          .join("; ")}
        .
      </p>
      {fields.disclosure !== "" && <p className="small">Viewers are told: “{fields.disclosure}”</p>}
      {prices.length > 0 && (
        <details className={styles.more}>
          <summary>Prices in {view.currency}, latest first</summary>
          <ul className="small num">
            {prices.map((price) => (
              <li key={price}>{price}</li>
            ))}
          </ul>
        </details>
      )}
      <details className={styles.more}>
        <summary>
          Edit<span className="sr"> {fields.name}</span>
        </summary>
        <ProductForm standing={fields} shops={view.shops} currency={view.currency} />
        <p>
          <RetireButton kind="product" id={fields.id} name={fields.name} isRetired={isRetired} />
        </p>
      </details>
    </div>
  );
}

function emptyProduct(foodId: string, shops: FoodView["shops"]): ProductFields {
  return {
    ...{ id: "", foodId, revision: 0, name: "", flavour: "", packGrams: "", disclosure: "" },
    ...{ months: [], allergens: [], maybe: [], traits: [], priceOn: "" },
    ...{ provenance: "bought", status: "available" },
    shops: shops.map(({ id }) => ({
      ...{ shopId: id, isSold: false, aisle: "", onlyThere: false, price: "" },
    })),
  };
}
