"use client";

import { useRouter } from "next/navigation";
import { Button } from "@/app/_ui/Button";
import { PUT_AWAY } from "@/lib/view/firstSteps";

const ONE_YEAR_SECONDS = 31_536_000;

/** Lets the person begin with the lines from now on; the page itself stays where it is. */
export function PutAway() {
  const router = useRouter();
  const putAway = () => {
    // The Cookie Store API is missing on plain-http addresses of a plant network.
    Object.assign(document, {
      cookie: `${PUT_AWAY}=away; path=/; max-age=${ONE_YEAR_SECONDS}; samesite=lax`,
    });
    router.push("/lines");
  };
  return <Button onClick={putAway}>Do not begin here again</Button>;
}
