# footfall
