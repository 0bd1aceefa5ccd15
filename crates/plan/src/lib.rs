//! plan.json: the open record of a whole plan
