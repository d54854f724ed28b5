"""What stands in the way of starting, rolling, the inspection and the road."""
