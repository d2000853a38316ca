import Link from "next/link";
import type { BibleView } from "#lib/use-cases/bible/load-bible.ts";
import { moveShopAction, retireShopAction } from "./actions.ts";
import styles from "./bible.module.css";
import { SheetFrame } from "./sheet-frame.tsx";
import { SwitchButton } from "./switch-button.client.tsx";
import { weekdayWords } from "./words.ts";

/** The shops, nearest first. */
export function ShopsSheet({ shops }: { readonly shops: BibleView["shops"] }) {
  const inUse = shops.filter((shop) => !shop.isRetired);
  const listed = [...inUse, ...shops.filter((shop) => shop.isRetired)];
  return (
    <SheetFrame
      isWide
      id="shops"
      title="Shops, nearest first"
      href="/bible/shops/new"
      link="Add a shop"
    >
      {listed.length === 0 ? (
        <p className="quiet">No shop yet. Errands are laid out by shop, day and aisle.</p>
      ) : (
        <ol className={styles.rows}>
          {listed.map((shop) => (
            <li key={shop.id}>
              <div>
                <Link className={styles.name} href={`/bible/shops/${shop.id}`} prefetch={false}>
                  {shop.name}
                </Link>
                <p className="small quiet">{lineOf(shop)}</p>
              </div>
              <div className="row">
                {!shop.isRetired && inUse.length > 1 && (
                  <>
                    <SwitchButton
                      label="Nearer"
                      spoken={`${shop.name} is nearer`}
                      action={moveShopAction}
                      input={{ id: shop.id, way: "nearer" }}
                      isOff={shop === inUse[0]}
                    />
                    <SwitchButton
                      label="Farther"
                      spoken={`${shop.name} is farther`}
                      action={moveShopAction}
                      input={{ id: shop.id, way: "farther" }}
                      isOff={shop === inUse.at(-1)}
                    />
                  </>
                )}
                <SwitchButton
                  label={shop.isRetired ? "Bring back" : "Retire"}
                  spoken={`${shop.isRetired ? "Bring back" : "Retire"} ${shop.name}`}
                  action={retireShopAction}
                  input={{ id: shop.id, isRetired: !shop.isRetired }}
                />
              </div>
            </li>
          ))}
        </ol>
      )}
    </SheetFrame>
  );
}

function lineOf(shop: BibleView["shops"][number]): string {
  return [
    ...(shop.isRetired ? ["retired"] : []),
    shop.days.length === 0 ? "days not said" : weekdayWords(shop.days),
    ...(shop.hours === "" ? [] : [shop.hours]),
    ...(shop.aisles.length === 0 ? [] : [`aisles: ${shop.aisles.join(", ")}`]),
    ...(shop.note === "" ? [] : [shop.note]),
  ].join("; ");
}
