import { serve } from "./rpc.ts";
import { services } from "./services.ts";

serve(services);
