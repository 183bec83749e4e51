import { estimateOcclusionPressure, isInputError } from 'cuffwork';
import { planSession } from 'cuffwork/plan';
import Fastify from 'fastify';

/** Pass each body to the function as it came: the function checks it, and throws one error that lists every problem. */
export const server = Fastify();

server.post('/occlusion-pressure', ({ body }) => estimateOcclusionPressure(body as never));
server.post('/plan', ({ body }) => planSession(body as never));

server.setErrorHandler((error, _request, reply) =>
  isInputError(error) ? reply.code(422).send({ issues: error.issues }) : reply.send(error),
);
