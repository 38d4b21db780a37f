import { serve } from "../../worker/rpc.ts";
import { services } from "./services.ts";

serve(services);
