# children
