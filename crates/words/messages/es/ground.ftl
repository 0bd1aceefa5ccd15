# ground
