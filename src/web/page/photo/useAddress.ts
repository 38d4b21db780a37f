import { useEffect, useMemo } from "react";

/** An address for a picture while it is shown. */
export function useAddress(picture: Blob): string {
  const address = useMemo(() => URL.createObjectURL(picture), [picture]);
  useEffect(() => () => URL.revokeObjectURL(address), [address]);
  return address;
}
